#include "core/frame/door_parts.h"

#include <fmt/format.h>

#include <cmath>

#include "core/frame/door_hinges.h"
#include "core/frame/door_latch.h"
#include "core/frame/door_places.h"
#include "core/frame/door_swing.h"

namespace prismwright {
namespace {

void warn_of_tight_swing(FrameDesk& desk, const DoorSide& latch) {
  const LatchRoom room = latch_room(*latch.door, desk.frame().hinge->place);
  const double gap = latch.door->set_back_mm + latch.fixed->set_back_mm;
  if (room.needed_mm <= gap) return;
  const std::string wanted = std::isfinite(room.needed_mm)
                                 ? fmt::format("a door gap of {:.1f} mm", room.needed_mm)
                                 : "more than any gap";
  desk.warn(
      FrameWarning::Kind::no_room, latch.door->mark, gap, room.needed_mm,
      fmt::format(
          "the door cannot swing out: its rib at the latch reaches in to {:.1f} mm from the lens axis and "
          "would run into the next panel, for which it needs {}. Take a wider panel as the door, or let "
          "the reflecting prisms end nearer the refracting band.",
          room.least_u_mm, wanted));
}

}  // namespace

void add_door_parts(FrameDesk& desk) {
  const auto door = door_places(desk.plan());
  if (!door) return;
  const Side latch_side = door->hinge_side == Side::clockwise ? Side::anticlockwise : Side::clockwise;
  const DoorSide hinge{desk.rib(door->panel, door->hinge_side), desk.rib(door->next_at_hinge, latch_side)};
  const DoorSide latch{desk.rib(door->panel, latch_side), desk.rib(door->next_at_latch, door->hinge_side)};
  if (!hinge.whole() || !latch.whole()) {
    desk.warn(
        FrameWarning::Kind::no_room, fmt::format("P{:02}", door->panel), 0, 0,
        "the door or a panel beside it has no rib to hang it from. Give the ribs room: thinner ribs or wider "
        "panels.");
    return;
  }
  const auto pads = [&](Side side) {
    return pad_heights(desk.plan(), door->panel, side, desk.low_v_mm(), desk.high_v_mm());
  };
  add_hinges(desk, hinge, pads(door->hinge_side));
  add_latch(desk, latch, pads(latch_side).front());
  warn_of_tight_swing(desk, latch);
}

}  // namespace prismwright
