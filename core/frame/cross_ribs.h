#pragma once

#include "core/frame/frame_desk.h"

namespace prismwright {

/// The level ribs between the bands of every panel that holds prisms: where the refracting band is turned about
/// the lens axis a level plate, else a bar turned about the panel's axis. Screwed through the side ribs into
/// their ends; a screw that finds no brass is left out with a warning.
void add_cross_ribs(FrameDesk& desk);

}  // namespace prismwright
