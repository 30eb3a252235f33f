#pragma once

#include "core/frame/frame_desk.h"

namespace prismwright {

/// Top and bottom rings as plates, as FramePlan::rings has them; joined to the ribs that reach them.
void add_ring_plates(FrameDesk& desk);

/// Base table under the bottom ring and finial plate over the top ring, each on a spacer at every joint of two
/// panels, with a long screw through plate and spacer into the ring. Settings of 0 leave a plate or the spacers
/// out.
void add_base_and_finial(FrameDesk& desk);

}  // namespace prismwright
