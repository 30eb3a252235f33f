#pragma once

#include "core/frame/door_places.h"
#include "core/frame/door_side.h"
#include "core/frame/frame_desk.h"

namespace prismwright {

/// A bar that turns about a screw in the outer edge of the neighbour's rib, within the heights; drawn open.
void add_latch(FrameDesk& desk, const DoorSide& side, HeightRange heights);

}  // namespace prismwright
