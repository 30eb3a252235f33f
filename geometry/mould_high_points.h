#pragma once

#include <vector>

#include "geometry/mould_skin.h"

namespace prismwright {

/// Places of the cavity from which air cannot rise along the skin, highest first: those that stand more than
/// `trap_mm` above the highest pass to a higher one. Indices into the skin's points.
std::vector<int> high_points(const MouldSkin& skin, const gp_Vec& up, double trap_mm);

}  // namespace prismwright
