#include "core/frame/frame_plan.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <set>

#include "core/base/angle.h"
#include "core/frame/needed_gap.h"
#include "core/frame/pockets.h"
#include "core/frame/prism_end.h"
#include "core/frame/rib_key.h"
#include "core/frame/rib_outline.h"

namespace prismwright {
namespace {

constexpr double kRoomAtRing_mm = 2;    // plain room between the outermost prisms and the rings
constexpr double kRingOverhang_mm = 3;  // ring beyond the ribs' tabs
constexpr double kRoomAtAxis_mm = 0.5;  // between the two ribs of a panel where they come nearest
constexpr double kLeastWall_mm = 1.5;   // brass left beside a pocket that is cut short
// Beyond this a rib that follows the flat face of a bull's-eye panel would run far out: it keeps the radius.
constexpr double kFlatPanelSide_deg = 50;
constexpr double kPlainChord_mm = 0.2;

struct Heights {
  double low = std::numeric_limits<double>::max();
  double high = std::numeric_limits<double>::lowest();

  void take(const Profile& profile, bool mirrored_too) {
    for (const SectionPoint p : polygon_of(profile, 0.01)) {
      low = std::min({low, p.z, mirrored_too ? -p.z : p.z});
      high = std::max({high, p.z, mirrored_too ? -p.z : p.z});
    }
  }

  // A ring is highest, and lowest, over the panel's axis.
  void take(const PlannedPrism& prism) {
    if (prism.turning == TurningAxis::lens) return take(prism.profile, false);
    const double dip = radians(prism.axis_dip_deg);
    for (const SectionPoint p : polygon_of(prism.profile, 0.01)) {
      const double on_axis = prism.axis_z_mm - p.r * std::sin(dip);
      const double away = p.z * std::cos(dip);
      const double other = prism.trim.half == Half::whole ? -away : away;
      low = std::min({low, on_axis + away, on_axis + other});
      high = std::max({high, on_axis + away, on_axis + other});
    }
  }
};

class FramePlanner {
 public:
  explicit FramePlanner(const LensPlan& plan) : plan_(plan), frame_(plan.values.frame) {}

  FramePlan plan() {
    if (!find_heights()) return {{}, {}, {"There is no zone to hold, so there is no frame."}};
    for (const PanelPlace& place : plan_.panels) {
      add_rib(place, Side::anticlockwise);
      add_rib(place, Side::clockwise);
    }
    add_ring("ring-top", high_v_, high_v_);
    add_ring("ring-bottom", low_v_, low_v_ - frame_.ring_mm);
    return std::move(result_);
  }

 private:
  struct Sides {
    double own_deg;  // from the panel's axis, positive away from it
    double width_deg;
  };

  bool find_heights() {
    Heights heights;
    double extent = 0;
    for (const Zone& zone : plan_.section.zones) heights.take(zone.profile, is_refracting(zone.kind));
    for (const PlannedPrism& prism : plan_.prisms) {
      heights.take(prism);
      if (prism.panel == plan_.prisms.front().panel)
        extent = std::max(extent, section_extent_mm(prism.profile));
    }
    if (heights.low > heights.high) return false;
    const double room = std::max(kRoomAtRing_mm, frame_.setting_gap_mm + kLeastWall_mm) +
                        needed_gap_mm(extent, plan_.values.material.name, frame_.heat_range_k);
    high_v_ = heights.high + room;
    low_v_ = heights.low - room;
    return true;
  }

  [[nodiscard]] std::vector<const PlannedPrism*> prisms_of(int panel) const {
    std::vector<const PlannedPrism*> prisms;
    for (const PlannedPrism& prism : plan_.prisms) {
      if (prism.panel == panel) prisms.push_back(&prism);
    }
    return prisms;
  }

  static Sides sides_of(const PanelPlace& place, Side side) {
    const double edge =
        side == Side::clockwise ? place.axis_deg - place.from_deg : place.to_deg - place.axis_deg;
    return {edge, place.to_deg - place.from_deg};
  }

  void add_rib(const PanelPlace& place, Side side) {
    const auto prisms = prisms_of(place.number);
    const Sides sides = sides_of(place, side);
    std::string likeness = fmt::format("{:.8f} {:.8f}", sides.own_deg, sides.width_deg);
    for (const PlannedPrism* prism : prisms) likeness += " " + prism->zone + prism->shape_key;
    // Sides that are mirror images share their outlines; a lopsided panel's prisms differ by their keys.
    const auto known = known_.find(likeness);
    const bool left = side == Side::anticlockwise;
    RibPlan rib =
        known != known_.end() ? renamed(known->second, place.number) : shaped_rib(place, side, prisms);
    if (rib.outline.empty()) return;
    rib.mark = fmt::format("P{:02}-rib-{}", place.number, left ? "left" : "right");
    rib.panel = place.number;
    rib.side = side;
    rib.azimuth_deg = left ? place.to_deg : place.from_deg;
    if (known == known_.end()) known_.emplace(likeness, rib);
    result_.ribs.push_back(std::move(rib));
  }

  // Prism marks differ between congruent panels in their panel number alone.
  static RibPlan renamed(RibPlan rib, int panel) {
    for (Pocket& pocket : rib.pockets) {
      for (std::string& mark : pocket.marks) {
        const std::size_t dash = mark.find('-');
        if (dash != std::string::npos) mark = fmt::format("P{:02}{}", panel, mark.substr(dash));
      }
    }
    return rib;
  }

  RibPlan shaped_rib(const PanelPlace& place, Side side, const std::vector<const PlannedPrism*>& prisms) {
    RibPlan rib;
    rib.thickness_mm = frame_.rib_mm;
    rib.pocket_mm = frame_.pocket_mm;
    std::vector<PlateRegion> rooms;
    std::set<std::string> held_zones;
    for (const PlannedPrism* prism : prisms) {
      rooms.push_back(pocket_room(*prism, side, frame_));
      if (!rooms.back().empty()) held_zones.insert(prism->zone);
    }
    rib.pockets = united_pockets(prisms, rooms, frame_);
    const Sides sides = sides_of(place, side);
    const RibLimits limits{frame_.rib_margin_mm, least_u(sides), low_v_, high_v_};
    std::vector<PlateOutline> held = plain_course(held_zones, sides);
    for (const Pocket& pocket : rib.pockets) held.push_back(pocket.outline);
    rib.outline = rib_outline(held, limits);
    keep_pockets_inside(rib, place.number, limits.least_u_mm);
    for (Pocket& pocket : rib.pockets) fit_edge(pocket, frame_);
    rib.shape_key = rib_key(rib);
    return rib;
  }

  // The two ribs of a panel lean together towards the lens axis and meet where u tan(width / 2) = thickness.
  [[nodiscard]] double least_u(const Sides& sides) const {
    const double half_width = radians(sides.width_deg / 2);
    return (frame_.rib_mm + kRoomAtAxis_mm) * std::cos(half_width) / std::sin(half_width) + kRoomAtAxis_mm;
  }

  // Zones that end in no pocket of this rib are followed as if the section stood in the side plane.
  [[nodiscard]] std::vector<PlateOutline> plain_course(const std::set<std::string>& held_zones,
                                                       const Sides& sides) const {
    std::vector<PlateOutline> outlines;
    const auto add = [&](const Zone& zone, const Profile& profile) {
      const bool flat =
          !plan_.values.turns_about_lens(band_of(zone.kind)) && sides.own_deg <= kFlatPanelSide_deg;
      const double stretch = flat ? 1 / std::cos(radians(sides.own_deg)) : 1;
      PlateOutline outline;
      for (const SectionPoint p : polygon_of(profile, kPlainChord_mm)) outline.push_back({p.r * stretch, p.z});
      outlines.push_back(std::move(outline));
    };
    for (const Zone& zone : plan_.section.zones) {
      if (held_zones.contains(zone.mark)) continue;
      add(zone, zone.profile);
      if (zone.kind == ZoneKind::ring) add(zone, lower_image_of(zone));
    }
    return outlines;
  }

  // Near the axis there may be no room for brass: a pocket is cut short there, and its prism will clash.
  void keep_pockets_inside(RibPlan& rib, int panel, double least_u_mm) {
    const PlateRegion room =
        grown({rib.outline}, -std::min(kLeastWall_mm, frame_.rib_margin_mm / 2), Corner::sharp);
    std::vector<Pocket> kept;
    for (const Pocket& pocket : rib.pockets) {
      const PlateRegion left = filled(common_part({pocket.outline}, room));
      if (std::abs(area_mm2(left) - signed_area_mm2(pocket.outline)) < 1e-2) {
        kept.push_back(pocket);
        continue;
      }
      result_.notes.push_back(
          fmt::format("Panel {}: the prisms {} stand nearer the lens axis than ribs {} mm thick have room for "
                      "(from {:.1f} mm). Take a thinner rib or let the reflecting prisms end lower.",
                      panel, fmt::join(pocket.marks, ", "), frame_.rib_mm, least_u_mm));
      for (const PlateOutline& outline : left) kept.push_back({outline, pocket.marks, {}});
    }
    rib.pockets = std::move(kept);
  }

  // As wide as the tabs of all ribs at this height, thickness included.
  void add_ring(const char* mark, double joint_v, double z_low) {
    double inner = std::numeric_limits<double>::max();
    double outer = 0;
    for (const RibPlan& rib : result_.ribs) {
      for (const PlatePoint p : rib.outline) {
        if (std::abs(p.v - joint_v) > 1e-3) continue;
        inner = std::min(inner, p.u);
        outer = std::max(outer, std::hypot(p.u, rib.thickness_mm));
      }
    }
    if (outer == 0) return;
    result_.rings.push_back(
        {mark, std::max(1.0, inner - kRingOverhang_mm), outer + kRingOverhang_mm, z_low, frame_.ring_mm});
  }

  const LensPlan& plan_;
  const FrameSettings& frame_;
  FramePlan result_;
  std::map<std::string, RibPlan> known_;
  double high_v_ = 0;
  double low_v_ = 0;
};

}  // namespace

FramePlan plan_frame(const LensPlan& plan) { return FramePlanner(plan).plan(); }

std::vector<PlateOutline> end_outlines(const PlannedPrism& prism, Side side, double depth_mm, double chord_mm) {
  return filled(end_slice(prism, side, depth_mm, chord_mm));
}

}  // namespace prismwright
