#pragma once

#include "core/frame/frame_desk.h"

namespace prismwright {

/// The top and bottom rails of every panel that has both ribs, screwed through the ribs into their ends and
/// from the rings; a door's rails stand clear of the rings by the door gap. A rail that finds no room is left
/// out with a warning.
void add_rails(FrameDesk& desk);

}  // namespace prismwright
