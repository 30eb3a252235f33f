#pragma once

#include "core/lens/plan.h"

namespace prismwright {

/// Area of the faces of a prism that are polished (inner, outer, entry, exit, reflecting), mm2, as drawn,
/// within 2e-4 of itself.
///
/// A face's area is the integral along its section of the distance from the turning line times the angle that
/// the trim leaves there (Pappus's rule, circle by circle); a flat inner face is measured in its own plane. 0
/// when the trim leaves nothing.
double optical_area_mm2(const PlannedPrism& prism);

}  // namespace prismwright
