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
/// within 0.01 mm, round the corners too.
PlateRegion pocket_room(const PlannedPrism& prism, Side side, const FrameSettings& frame);

/// The pockets of a rib, by their polygons alone: rooms that run together, or leave less than 0.3 mm of brass
/// between them, are one pocket; islands of brass within one are dropped; inside corners are relieved for the
/// cutter. From the top down.
std::vector<Pocket> united_pockets(const std::vector<const PlannedPrism*>& prisms,
                                   const std::vector<PlateRegion>& rooms, const FrameSettings& frame);

/// Gives a pocket its lines and arcs from its polygon, within 0.004 mm of it and with no inside arc of less
/// than the cutter's radius where the polygon has none.
void fit_edge(Pocket& pocket, const FrameSettings& frame);

}  // namespace prismwright
