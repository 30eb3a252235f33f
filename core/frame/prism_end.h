#pragma once

#include "core/frame/plate_polygons.h"
#include "core/lens/plan.h"

namespace prismwright {

/// Where the prism cuts the plane at one depth. Halves and belt pieces give one outline at most, a whole ring
/// up to two. Polygons within `chord_mm`.
PlateRegion end_slice(const PlannedPrism& prism, Side side, double depth_mm, double chord_mm);

/// Everything that the prism covers of the planes from one depth to another, seen along the rib's normal.
PlateRegion swept_end(const PlannedPrism& prism, Side side, double from_mm, double to_mm, double chord_mm);

}  // namespace prismwright
