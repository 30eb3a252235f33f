#include "core/frame/rib_shape.h"

#include <fmt/format.h>
#include <tbb/parallel_for.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "core/base/angle.h"
#include "core/frame/corner_relief.h"
#include "core/frame/door_places.h"
#include "core/frame/landings.h"
#include "core/frame/pockets.h"
#include "core/frame/rib_key.h"
#include "core/frame/rib_outline.h"
#include "core/frame/thin_brass.h"

namespace prismwright {
namespace {

constexpr double kRoomAtAxis_mm = 0.5;  // between the two ribs of a panel where they come nearest
constexpr double kLeastWall_mm = 1.5;   // brass left beside a pocket that is cut short
// Beyond this a rib that follows the flat face of a bull's-eye panel would run far out: it keeps the radius.
constexpr double kFlatPanelSide_deg = 50;
constexpr double kPlainChord_mm = 0.2;
constexpr double kOutlineChord_mm = 0.002;
constexpr double kSameArea_mm2 = 1e-2;
constexpr double kRadiusRounding_mm = 1e-3;

class RibShaper {
 public:
  RibShaper(const RibTask& task, const LensPlan& plan, const FrameHeights& heights)
      : task_(task), plan_(plan), frame_(plan.values.frame), heights_(heights) {}

  RibShape shape() {
    RibPlan& rib = result_.rib;
    const bool door = frame_.door_panel == task_.place.number && door_places(plan_);
    rib.thickness_mm = frame_.rib_mm;
    rib.pocket_mm = frame_.pocket_mm;
    rib.set_back_mm = door ? frame_.door_gap_mm : 0;
    const std::vector<PlateRegion> rooms = rooms_of_prisms();
    rib.pockets = united_pockets(task_.prisms, rooms, frame_);
    std::vector<PlateOutline> held = plain_course(rooms);
    for (const Pocket& pocket : rib.pockets) held.push_back(pocket.outline);
    rib.edge = rib_edge(held, limits());
    rib.outline = flattened(rib.edge, kOutlineChord_mm);
    if (rib.outline.empty()) return std::move(result_);
    keep_pockets_inside();
    tbb::parallel_for(std::size_t{0}, rib.pockets.size(),
                      [&](std::size_t i) { fit_edge(rib.pockets[i], frame_); });
    warn_of_sharp_pockets();
    warn(thin_brass_warnings(rib, frame_.least_brass_mm));
    rib.side = task_.side;
    warn(landing_warnings(rib, plan_, frame_.least_landing_mm));
    rib.shape_key = rib_key(rib);
    return std::move(result_);
  }

 private:
  [[nodiscard]] std::vector<PlateRegion> rooms_of_prisms() const {
    std::vector<PlateRegion> rooms(task_.prisms.size());
    tbb::parallel_for(std::size_t{0}, rooms.size(),
                      [&](std::size_t i) { rooms[i] = pocket_room(*task_.prisms[i], task_.side, frame_); });
    return rooms;
  }

  // A door's ribs end short of the rings.
  [[nodiscard]] RibLimits limits() const {
    const double short_by = result_.rib.set_back_mm;
    return {frame_.rib_margin_mm,
            least_u_mm(),
            heights_.low_v + short_by,
            heights_.high_v - short_by,
            frame_.inside_radius_mm,
            pad_heights(plan_, task_.place.number, task_.side, heights_.low_v, heights_.high_v)};
  }

  // The two ribs of a panel lean together towards the lens axis and meet where u tan(width / 2) = thickness.
  [[nodiscard]] double least_u_mm() const {
    const double half_width = radians(task_.width_deg() / 2);
    return (frame_.rib_mm + kRoomAtAxis_mm) * std::cos(half_width) / std::sin(half_width) + kRoomAtAxis_mm;
  }

  // Zones that end in no pocket of this rib are followed as if the section stood in the side plane.
  [[nodiscard]] std::vector<PlateOutline> plain_course(const std::vector<PlateRegion>& rooms) const {
    std::set<std::string> held;
    for (std::size_t i = 0; i < rooms.size(); ++i) {
      if (!rooms[i].empty()) held.insert(task_.prisms[i]->zone);
    }
    std::vector<PlateOutline> outlines;
    for (const Zone& zone : plan_.section.zones) {
      if (held.contains(zone.mark)) continue;
      const double stretch = stretch_of(zone);
      add_plain(zone.profile, stretch, outlines);
      if (zone.kind == ZoneKind::ring) add_plain(lower_image_of(zone), stretch, outlines);
    }
    return outlines;
  }

  [[nodiscard]] double stretch_of(const Zone& zone) const {
    const bool flat =
        !plan_.values.turns_about_lens(band_of(zone.kind)) && task_.own_deg() <= kFlatPanelSide_deg;
    return flat ? 1 / std::cos(radians(task_.own_deg())) : 1;
  }

  static void add_plain(const Profile& profile, double stretch, std::vector<PlateOutline>& outlines) {
    PlateOutline outline;
    for (const SectionPoint p : polygon_of(profile, kPlainChord_mm)) outline.push_back({p.r * stretch, p.z});
    outlines.push_back(std::move(outline));
  }

  // Near the axis there may be no room for brass: a pocket is cut short there, and its prism will clash.
  void keep_pockets_inside() {
    RibPlan& rib = result_.rib;
    const PlateRegion room =
        grown({rib.outline}, -std::min(kLeastWall_mm, frame_.rib_margin_mm / 2), Corner::sharp);
    std::vector<Pocket> kept;
    for (const Pocket& pocket : rib.pockets) {
      const PlateRegion left = filled(common_part({pocket.outline}, room));
      if (std::abs(area_mm2(left) - signed_area_mm2(pocket.outline)) < kSameArea_mm2) {
        kept.push_back(pocket);
        continue;
      }
      say_cut_short(pocket);
      const double radius = frame_.inside_radius_mm;
      for (const PlateOutline& outline : grown(grown(left, -radius, Corner::round), radius, Corner::round)) {
        kept.push_back({outline, pocket.marks, {}});
      }
    }
    rib.pockets = std::move(kept);
  }

  void say_cut_short(const Pocket& pocket) {
    const std::string text = fmt::format(
        "The prisms {} stand nearer the lens axis than ribs {} mm thick have room for (from {:.1f} mm). Take a "
        "thinner rib or let the reflecting prisms end lower.",
        fmt::join(pocket.marks, ", "), frame_.rib_mm, least_u_mm());
    std::string note = text;
    note[0] = 't';
    result_.notes.push_back(fmt::format("Panel {}: {}", task_.place.number, note));
    result_.warnings.push_back(
        {FrameWarning::Kind::pocket_cut_short, {}, extent_of({pocket.outline}).low.u, least_u_mm(), text});
  }

  void warn(const std::vector<FrameWarning>& warnings) {
    result_.warnings.insert(result_.warnings.end(), warnings.begin(), warnings.end());
  }

  void warn_of_sharp_pockets() {
    for (const Pocket& pocket : result_.rib.pockets) {
      const double least = least_inside_radius_mm(pocket.edge, CutSide::inside_of_chain);
      if (least >= frame_.inside_radius_mm - kRadiusRounding_mm) continue;
      if (reaches_all(pocket.outline, frame_.inside_radius_mm)) continue;  // a turn of a hair
      result_.warnings.push_back(
          {FrameWarning::Kind::sharp_inside,
           {},
           least,
           frame_.inside_radius_mm,
           fmt::format(
               "The pocket of {} has an inside corner of {:.2f} mm radius, but the cutter leaves {:g} mm "
               "(frame.inside_radius_mm). Take a smaller cutter or a wider setting gap.",
               fmt::join(pocket.marks, ", "), least, frame_.inside_radius_mm)});
    }
  }

  const RibTask& task_;
  const LensPlan& plan_;
  const FrameSettings& frame_;
  const FrameHeights& heights_;
  RibShape result_;
};

// All that shapes a prism's end beside the angles of the panel's sides.
std::string likeness_of(const PlannedPrism& prism) {
  std::string likeness =
      fmt::format(" {} {} {:.6f} {:.6f} {} {:.6f} {:.6f} {:.6f}", prism.zone, static_cast<int>(prism.turning),
                  prism.axis_z_mm, prism.axis_dip_deg, static_cast<int>(prism.trim.half),
                  prism.trim.half_gap_mm, prism.trim.set_back_mm, prism.trim.flat_inner_mm.value_or(-1));
  for (const Face& face : prism.profile.faces) {
    const SectionPoint middle = face.points[face.points.size() / 2];
    likeness += fmt::format(" {:.6f} {:.6f} {:.6f} {:.6f}", face.start().r, face.start().z, middle.r, middle.z);
  }
  return likeness;
}

}  // namespace

double RibTask::own_deg() const {
  return side == Side::clockwise ? place.axis_deg - place.from_deg : place.to_deg - place.axis_deg;
}

std::string likeness_of(const RibTask& task, const LensPlan& plan, const FrameHeights& heights) {
  std::string likeness = fmt::format("{:.8f} {:.8f}", task.own_deg(), task.width_deg());
  if (plan.values.frame.door_panel == task.place.number) likeness += " door";
  for (const HeightRange pad : pad_heights(plan, task.place.number, task.side, heights.low_v, heights.high_v)) {
    likeness += fmt::format(" pad {:.6f} {:.6f}", pad.low, pad.high);
  }
  // Sides that are mirror images share their outlines.
  for (const PlannedPrism* prism : task.prisms) likeness += likeness_of(*prism);
  return likeness;
}

RibShape shaped_rib(const RibTask& task, const LensPlan& plan, const FrameHeights& heights) {
  return RibShaper(task, plan, heights).shape();
}

}  // namespace prismwright
