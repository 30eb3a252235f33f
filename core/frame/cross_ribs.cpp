#include "core/frame/cross_ribs.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/frame/bar_ends.h"
#include "core/frame/level_plates.h"
#include "core/frame/part_keys.h"

namespace prismwright {
namespace {

constexpr double kLeastWidth_mm = 2;

bool is_upper(const SectionRib& rib) { return rib.low.z >= 0; }

std::string mark_of(const PanelBay& bay, const SectionRib& rib) {
  return fmt::format("P{:02}-rib-{}", bay.place.number, is_upper(rib) ? "upper" : "lower");
}

const PlannedPrism* refracting_prism_of(const LensPlan& plan, int panel) {
  for (const PlannedPrism& prism : plan.prisms) {
    if (prism.panel == panel && is_refracting(prism.kind)) return &prism;
  }
  return nullptr;
}

void add_plate(FrameDesk& desk, const PanelBay& bay, const SectionRib& rib) {
  LevelPlate plate{mark_of(bay, rib),
                   PartKind::cross_rib,
                   std::max(rib.low.r, least_plate_radius_mm(bay)),
                   rib.high.r,
                   {rib.low.z, rib.high.z}};
  const double width = plate.outer_radius_mm - plate.inner_radius_mm;
  if (width >= kLeastWidth_mm) return add_level_plate(desk, bay, plate);
  desk.warn(
      FrameWarning::Kind::no_room, plate.mark, width, kLeastWidth_mm,
      fmt::format("left out, as it would be {:.1f} mm wide. Let the ribs between bands begin nearer the lens "
                  "axis or end farther from it.",
                  width));
}

// A rib beyond the outermost prisms may stand where the rails are.
bool clears_rails(FrameDesk& desk, const PanelBay& bay, const SectionRib& rib) {
  const FrameSettings& settings = desk.settings();
  const double taken = settings.rail_mm + (bay.is_door ? settings.door_gap_mm : 0);
  const double room = std::min(desk.high_v_mm() - taken - rib.high.z, rib.low.z - desk.low_v_mm() - taken);
  if (room >= 0) return true;
  desk.warn(
      FrameWarning::Kind::no_room, mark_of(bay, rib), room, 0,
      "left out, as no prisms stand between it and the rail, which takes its place. Take ribs between bands "
      "only where prisms stand on either side, or make them thinner.");
  return false;
}

class BarMaker {
 public:
  BarMaker(FrameDesk& desk, const PanelBay& bay, const SectionRib& rib, const PlannedPrism& like)
      : desk_(desk), bay_(bay), rib_(rib) {
    section_ = {rib.low.r, rib.high.r, std::min(std::abs(rib.low.z), std::abs(rib.high.z)),
                std::max(std::abs(rib.low.z), std::abs(rib.high.z)), is_upper(rib)};
    bar_.mark = mark_of(bay, rib);
    bar_.panel = bay.place.number;
    bar_.shape = shape(like);
  }

  void make() {
    for (const RibPlan* side : {bay_.left, bay_.right}) add_end(*side);
    desk_.frame().bars.push_back(bar_);
  }

 private:
  [[nodiscard]] PlannedPrism shape(const PlannedPrism& like) const {
    PlannedPrism prism = like;
    prism.mark = bar_.mark;
    prism.zone = rib_.mark;
    prism.kind = ZoneKind::ring;
    const SectionPoint b{rib_.high.r, rib_.low.z};
    const SectionPoint d{rib_.low.r, rib_.high.z};
    prism.profile = {
        {straight_face(FaceRole::joint_lower, rib_.low, b), straight_face(FaceRole::outer, b, rib_.high),
         straight_face(FaceRole::joint_upper, rib_.high, d), straight_face(FaceRole::inner, d, rib_.low)}};
    // Ribs lie in the section's own frame, whatever aim the bands have.
    prism.axis_z_mm = prism.axis_dip_deg = 0;
    prism.trim.set_back_mm = std::max(bay_.left->thickness_mm, bay_.right->thickness_mm);
    prism.trim.half = section_.upper ? Half::upper : Half::lower;
    prism.trim.half_gap_mm = 0;
    prism.trim.flat_inner_mm.reset();
    prism.shape_key = bar_shape_key(prism);
    return prism;
  }

  void add_end(const RibPlan& side) {
    const BarEnd end(section_, side, bay_.place.axis_deg);
    if (!end.reaches()) {
      return no_screw(0, "it is cut off at the level of the focus before it comes to the side rib");
    }
    desk_.join(bar_.mark, side.mark);
    for (PlateOutline& outline : end_outlines(bar_.shape, side.side, side.thickness_mm, 0.05)) {
      desk_.cover(side, std::move(outline));
    }
    const double screw = desk_.settings().screw_mm;
    const double wall = screw / 2 + desk_.settings().least_brass_mm;
    for (const double hold : {2 * screw, 1.5 * screw, screw}) {
      const auto places = in_brass(side, end.bore_places(hold, wall));
      if (places.empty()) continue;
      for (const PlatePoint at : places) add_bar_screw(side, at, hold);
      return;
    }
    no_screw(std::min(section_.far_mm - section_.near_mm, section_.outer_r_mm - section_.inner_r_mm),
             fmt::format("no place of it and of the side rib keeps {:g} mm of brass round one",
                         desk_.settings().least_brass_mm));
  }

  // The innermost and the outermost place that have brass in the side rib, or one of them.
  [[nodiscard]] std::vector<PlatePoint> in_brass(const RibPlan& side, const std::vector<PlatePoint>& places) {
    const FrameSettings& settings = desk_.settings();
    const double room = room_round_screw_mm(settings.screw_mm, settings.least_brass_mm,
                                            can_sink(plate_thickness_mm(side), settings.screw_mm));
    if (places.empty()) return {};
    HeightRange heights{places.front().v, places.front().v};
    for (const PlatePoint p : places) heights = {std::min(heights.low, p.v), std::max(heights.high, p.v)};
    const RibBrass brass(side, desk_.flat(side.mark), heights);
    std::vector<PlatePoint> kept;
    for (const PlatePoint p : places) {
      if (brass.room_at(p) >= room) kept.push_back(p);
    }
    if (kept.empty()) return {};
    const PlatePoint first = kept.front();
    const PlatePoint last = kept.back();
    if (std::hypot(last.u - first.u, last.v - first.v) >= 2 * room) return {first, last};
    return {kept[kept.size() / 2]};
  }

  void add_bar_screw(const RibPlan& side, PlatePoint at, double hold_mm) {
    const ScrewTask task = add_rib_screw(desk_, {&side, at, hold_mm, bar_.mark});
    const SpaceFrame panel = level_frame(radians(bay_.place.axis_deg), 0);
    bar_.bores.push_back({panel.into(place_in(side, at, side.thickness_mm)), panel.into(task.axis.along),
                          hold_mm, task.screw_mm, "taps " + screw_name(task.screw_mm)});
  }

  void no_screw(double value_mm, const std::string& why) {
    const double wanted = desk_.settings().screw_mm + 2 * desk_.settings().least_brass_mm;
    desk_.warn(
        FrameWarning::Kind::no_room, bar_.mark, value_mm, wanted,
        fmt::format("an end gets no screw of {}: {}. Take smaller screws or larger ribs between the bands, or "
                    "hold it by other means.",
                    screw_name(desk_.settings().screw_mm), why));
  }

  FrameDesk& desk_;
  const PanelBay& bay_;
  const SectionRib& rib_;
  BarSection section_;
  TurnedBar bar_;
};

// Where bars are cut off at the level of the focus, the upper one stands on the lower one.
void join_at_level(FrameDesk& desk, const PanelBay& bay) {
  const auto& ribs = desk.plan().section.ribs;
  if (ribs.size() != 2 || !clears_rails(desk, bay, ribs[0]) || !clears_rails(desk, bay, ribs[1])) return;
  for (const RibPlan* side : {bay.left, bay.right}) {
    bool both = true;
    for (const SectionRib& rib : ribs) {
      const double near = std::min(std::abs(rib.low.z), std::abs(rib.high.z));
      const double far = std::max(std::abs(rib.low.z), std::abs(rib.high.z));
      const BarEnd end({rib.low.r, rib.high.r, near, far, is_upper(rib)}, *side, bay.place.axis_deg);
      both = both && end.ends_level();
    }
    if (both) desk.join(mark_of(bay, ribs[0]), mark_of(bay, ribs[1]));
  }
}

}  // namespace

void add_cross_ribs(FrameDesk& desk) {
  for (const PanelBay& bay : desk.bays()) {
    const PlannedPrism* like = refracting_prism_of(desk.plan(), bay.place.number);
    if (!like || !bay.has_ribs()) continue;
    const bool about_lens = like->turning == TurningAxis::lens;
    for (const SectionRib& rib : desk.plan().section.ribs) {
      if (!clears_rails(desk, bay, rib)) continue;
      if (about_lens)
        add_plate(desk, bay, rib);
      else
        BarMaker(desk, bay, rib, *like).make();
    }
    if (!about_lens) join_at_level(desk, bay);
  }
}

}  // namespace prismwright
