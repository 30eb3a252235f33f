#include "core/frame/door_parts.h"

#include <fmt/format.h>

#include "core/frame/door_hinges.h"
#include "core/frame/door_latch.h"
#include "core/frame/door_places.h"

namespace prismwright {

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
}

}  // namespace prismwright
