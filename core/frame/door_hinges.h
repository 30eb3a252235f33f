#pragma once

#include <vector>

#include "core/frame/door_places.h"
#include "core/frame/door_side.h"
#include "core/frame/frame_desk.h"

namespace prismwright {

/// Two lift-off hinges at the given heights, the lower one first, about one upright line in the middle of the
/// door gap, farther seaward than anything of the two ribs. Sets FramePlan::hinge.
void add_hinges(FrameDesk& desk, const DoorSide& side, const std::vector<HeightRange>& heights);

}  // namespace prismwright
