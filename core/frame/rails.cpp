#include "core/frame/rails.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/frame/level_plates.h"

namespace prismwright {
namespace {

constexpr double kLeastWidth_mm = 2;
constexpr double kScrewEvery_mm = 300;  // along the rail, between two screws of a ring

class RailMaker {
 public:
  RailMaker(FrameDesk& desk, const PanelBay& bay, bool top) : desk_(desk), bay_(bay), top_(top) {}

  void make() {
    rail_.mark = fmt::format("P{:02}-rail-{}", bay_.place.number, top_ ? "top" : "bottom");
    rail_.heights = heights();
    if (!find_radii()) return;
    add_level_plate(desk_, bay_, rail_);
    if (!bay_.is_door) hang_on_ring();
  }

 private:
  [[nodiscard]] HeightRange heights() const {
    const double rail = desk_.settings().rail_mm;
    const double away = bay_.is_door ? desk_.settings().door_gap_mm : 0;
    if (top_) return {desk_.high_v_mm() - away - rail, desk_.high_v_mm() - away};
    return {desk_.low_v_mm() + away, desk_.low_v_mm() + away + rail};
  }

  // Within the tabs of both ribs; where they do not face each other, over both.
  bool find_radii() {
    const auto left = widest_brass(*bay_.left, rail_.heights);
    const auto right = widest_brass(*bay_.right, rail_.heights);
    if (!left || !right) return refuse("the ribs have no tab as tall as the rail");
    const double depth_left = bay_.left->thickness_mm;
    const double depth_right = bay_.right->thickness_mm;
    const double in_left = radius_at(left->from_u_mm, depth_left);
    const double in_right = radius_at(right->from_u_mm, depth_right);
    const double out_left = radius_at(left->to_u_mm, depth_left);
    const double out_right = radius_at(right->to_u_mm, depth_right);
    const double least = least_plate_radius_mm(bay_);
    rail_.inner_radius_mm = std::max({in_left, in_right, least});
    rail_.outer_radius_mm = std::min(out_left, out_right);
    const double wanted = desk_.settings().screw_mm + 2 * desk_.settings().least_brass_mm;
    if (rail_.outer_radius_mm - rail_.inner_radius_mm < std::max(kLeastWidth_mm, wanted)) {
      rail_.inner_radius_mm = std::max(std::min(in_left, in_right), least);
      rail_.outer_radius_mm = std::max(out_left, out_right);
    }
    if (rail_.outer_radius_mm - rail_.inner_radius_mm >= kLeastWidth_mm) return true;
    return refuse("the two ribs stand too near together");
  }

  bool refuse(const char* why) {
    desk_.warn(
        FrameWarning::Kind::no_room, rail_.mark, rail_.outer_radius_mm - rail_.inner_radius_mm, kLeastWidth_mm,
        fmt::format(
            "left out: {}. Take thinner ribs or rails, or let the prisms end farther from the lens axis.",
            why));
    return false;
  }

  void hang_on_ring() {
    const RingPlan* ring = desk_.ring(top_);
    if (!ring) return;
    desk_.join(rail_.mark, ring->mark);
    const auto angles = screw_angles();
    if (angles.empty()) {
      desk_.warn(
          FrameWarning::Kind::no_room, rail_.mark, rail_.outer_radius_mm - rail_.inner_radius_mm, least_width(),
          fmt::format("no room for a screw of {} from the ring. Take smaller screws or a wider rib margin.",
                      screw_name(desk_.settings().screw_mm)));
    }
    for (const double angle : angles) add_ring_screw(*ring, angle);
  }

  [[nodiscard]] double least_width() const {
    return desk_.settings().screw_mm + 2 * desk_.settings().least_brass_mm;
  }
  [[nodiscard]] double middle_radius() const { return (rail_.inner_radius_mm + rail_.outer_radius_mm) / 2; }

  // Clear of the bores in both ends; azimuths.
  [[nodiscard]] std::vector<double> screw_angles() const {
    if (rail_.outer_radius_mm - rail_.inner_radius_mm < least_width()) return {};
    const double screw = desk_.settings().screw_mm;
    const double depth = std::max(bay_.left->thickness_mm, bay_.right->thickness_mm) + 2.5 * screw +
                         desk_.settings().least_brass_mm;
    const double radius = middle_radius();
    if (depth >= radius) return {};
    const double reach = bay_.half_width() - std::asin(depth / radius);
    if (reach < 0) return {};
    const double apart = screw_head_mm(screw) + desk_.settings().least_brass_mm;
    if (2 * radius * std::sin(reach) < apart) return {bay_.middle()};
    const int spaces = 1 + static_cast<int>(2 * reach * radius / kScrewEvery_mm);
    std::vector<double> angles;
    for (int i = 0; i <= spaces; ++i) angles.push_back(bay_.middle() - reach + 2 * reach * i / spaces);
    return angles;
  }

  void add_ring_screw(const RingPlan& ring, double angle) {
    const FrameSettings& settings = desk_.settings();
    ScrewTask task;
    const double z = top_ ? ring.z_low_mm + ring.thickness_mm : ring.z_low_mm;
    task.axis = {level_frame(angle, z).out_of(SpacePoint{middle_radius(), 0, 0}), {0, 0, top_ ? -1.0 : 1.0}};
    task.screw_mm = settings.screw_mm;
    task.grip_mm = ring.thickness_mm;
    task.hold_mm = std::min(2 * settings.screw_mm, settings.rail_mm);
    task.sunk = can_sink(ring.thickness_mm, settings.screw_mm);
    task.panel = bay_.place.number;
    add_clear_hole(desk_.flat(ring.mark), task, task.sunk);
    add_tapped_hole(desk_.flat(rail_.mark), task);
    const std::string screw = add_screw(desk_, task);
    desk_.join(screw, ring.mark);
    desk_.join(screw, rail_.mark);
  }

  FrameDesk& desk_;
  const PanelBay& bay_;
  bool top_;
  LevelPlate rail_;
};

}  // namespace

void add_rails(FrameDesk& desk) {
  for (const PanelBay& bay : desk.bays()) {
    if (!bay.has_ribs()) {
      desk.warn(FrameWarning::Kind::no_room, fmt::format("P{:02}", bay.place.number), 0, 0,
                "no rib on one side at least, so no rails. Give its ribs room: thinner ribs or a wider panel.");
      continue;
    }
    for (const bool top : {true, false}) RailMaker(desk, bay, top).make();
  }
}

}  // namespace prismwright
