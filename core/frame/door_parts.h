#pragma once

#include "core/frame/frame_desk.h"

namespace prismwright {

/// Two lift-off hinges and the latch of a door panel, when the lens has one, and FramePlan::hinge.
///
/// The hinges turn about one upright line in the middle of the door gap, farther seaward than anything of the
/// two ribs that it parts, so that the door swings out clear of its neighbour. Each has a leaf on the
/// neighbour's rib with the pin fast in it, and over it a leaf on the door's rib that turns on the pin. Every
/// part whose `panel` is the door's moves with the door.
///
/// The latch is a bar that turns about a screw in the outer edge of the neighbour's rib; it is drawn open,
/// upright. Turned level it lies over the outer edge of the door's rib.
void add_door_parts(FrameDesk& desk);

}  // namespace prismwright
