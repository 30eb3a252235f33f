#pragma once

#include "core/lens/plan.h"

namespace prismwright {

/// The longest edge of a box that holds the prism, mm: what a printer must take.
///
/// The box is the smaller (by volume) of two: one that stands along the panel's own axes, and the tight box of
/// any direction that the kernel finds round points spread over the prism's skin (no facet of theirs departs
/// from it by more than 0.05 mm). It is a bound on the room needed, not the distance of the two points farthest
/// apart.
double greatest_length_mm(const PlannedPrism& prism);

}  // namespace prismwright
