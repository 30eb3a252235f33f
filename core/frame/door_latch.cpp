#include "core/frame/door_latch.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/frame/rib_holes.h"

namespace prismwright {
namespace {

constexpr double kRoomAtLatch_mm = 0.2;
constexpr double kPastHead_mm = 0.5;  // of the rib's edge, beside the screw's head

PlateChain upright_bar(double width_mm, double length_mm) {
  const double r = width_mm / 2;
  return {{{r, 0}, {r, length_mm}, 0, {}, 0},
          {{r, length_mm}, {-r, length_mm}, kPi, {0, length_mm}, r},
          {{-r, length_mm}, {-r, 0}, 0, {}, 0},
          {{-r, 0}, {r, 0}, kPi, {}, r}};
}

class LatchMaker {
 public:
  LatchMaker(FrameDesk& desk, const DoorSide& side)
      : desk_(desk), settings_(desk.settings()), side_(side), plate_mm_(plate_thickness_mm(*side.fixed)) {
    // The head, and the bar round it, no wider than the rib that they stand on: half sizes of screws.
    const double most = std::min(settings_.screw_mm, (plate_mm_ - kPastHead_mm) / 2);
    screw_mm_ = std::floor(2 * most) / 2;
  }

  void make(HeightRange heights) {
    const auto door = outer_edge(side_.door->outline, heights);
    const auto fixed = outer_edge(side_.fixed->outline, heights);
    if (!door || !fixed) return refuse(0, "the ribs have no outer edge at its height");
    if (screw_mm_ < 1) return refuse(plate_mm_, "the rib's edge is too thin for its screw");
    v_mm_ = (heights.low + heights.high) / 2;
    edge_u_mm_ = fixed->most_u_mm;
    back_u_mm_ = std::max(door->most_u_mm, fixed->most_u_mm) + kRoomAtLatch_mm;
    if (!find_hold()) return refuse(0, "the rib has too little brass behind its edge");
    add();
  }

 private:
  bool find_hold() {
    const RibBrass brass(*side_.fixed, desk_.flat(side_.fixed->mark), {v_mm_, v_mm_});
    for (const double screws : {3.0, 2.0, 1.5}) {
      hold_mm_ = screws * screw_mm_;
      if (brass.room_at({edge_u_mm_ - hold_mm_, v_mm_}) >= screw_mm_ / 2 + settings_.least_brass_mm)
        return true;
    }
    return false;
  }

  void refuse(double value_mm, const char* why) {
    desk_.warn(FrameWarning::Kind::no_room, "door-latch", value_mm, settings_.screw_mm,
               fmt::format("left out: {}. Take thicker ribs or a wider rib margin.", why));
  }

  [[nodiscard]] double width_mm() const { return std::min(plate_mm_, 3 * screw_mm_); }
  [[nodiscard]] double bar_mm() const { return 1.5 * screw_mm_; }

  void add() {
    const RibPlan& rib = *side_.fixed;
    // Turned level it covers the door's rib to its inner face.
    const double arm = plate_mm_ / 2 + rib.set_back_mm + side_.door->thickness_mm;
    FlatPart bar;
    bar.mark = "door-latch";
    bar.kind = PartKind::latch;
    bar.making = PartMaking::machined;
    bar.panel = rib.panel;
    bar.thickness_mm = bar_mm();
    bar.outline = upright_bar(width_mm(), arm - width_mm() / 2);
    const SpaceVector seaward = outward_of(rib);
    const double depth = rib.set_back_mm + plate_mm_ / 2;
    bar.place = {place_in(rib, {back_u_mm_, v_mm_}, depth), cross({0, 0, 1}, seaward), {0, 0, 1}, seaward};

    ScrewTask task;
    task.axis = {bar.place.origin + bar_mm() * seaward, -seaward};
    task.screw_mm = screw_mm_;
    task.grip_mm = bar_mm() + back_u_mm_ - edge_u_mm_;
    task.hold_mm = hold_mm_;
    task.panel = rib.panel;
    add_clear_hole(bar, task, true);
    desk_.add(std::move(bar));
    add_tapped_bore(desk_.flat(rib.mark), place_in(rib, {edge_u_mm_, v_mm_}, depth), task, hold_mm_);
    const std::string screw = add_screw(desk_, task);
    for (const std::string& mark : {rib.mark, std::string("door-latch")}) desk_.join(screw, mark);
    desk_.join("door-latch", rib.mark);
    desk_.frame().notes.push_back(
        "The door's latch is drawn open, upright on the neighbouring rib. Turned level it lies over the outer "
        "edge "
        "of the door's rib.");
  }

  FrameDesk& desk_;
  const FrameSettings& settings_;
  DoorSide side_;
  double plate_mm_;
  double screw_mm_ = 0;
  double v_mm_ = 0;
  double edge_u_mm_ = 0;
  double back_u_mm_ = 0;
  double hold_mm_ = 0;
};

}  // namespace

void add_latch(FrameDesk& desk, const DoorSide& side, HeightRange heights) {
  LatchMaker(desk, side).make(heights);
}

}  // namespace prismwright
