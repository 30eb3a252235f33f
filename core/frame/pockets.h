#pragma once

#include <vector>

#include "core/frame/frame_plan.h"
#include "core/frame/plate_polygons.h"

namespace prismwright {

/// The room that one prism takes in a rib: every place of the inner face where brass nearer than the setting
/// gap to the prism would stand, whether beside its end within the pocket or under its lean in front of the
/// rib. Empty where the prism stays clear of the rib.
///
/// So the wall of a pocket cut to this outline has the setting gap as its least distance from the prism,
/// within 0.01 mm. Corners are left sharp: the cutter's own radius finds room there.
PlateRegion pocket_room(const PlannedPrism& prism, Side side, const FrameSettings& frame);

/// The pockets of a rib: rooms that run together are one pocket, islands of brass within one are dropped. From
/// the top down.
std::vector<Pocket> united_pockets(const std::vector<const PlannedPrism*>& prisms,
                                   const std::vector<PlateRegion>& rooms);

}  // namespace prismwright
