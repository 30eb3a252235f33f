#pragma once

#include <vector>

#include "core/works/turned_solid.h"

namespace prismwright {

/// The profile as its ring is turned: a lower one of panel turning as its upper image (z >= 0).
Profile upper_profile(const PlannedPrism& prism);

/// The planes that cut more than kCongruent_mm deep into what the other planes leave of the ring, seen from the
/// turning line. Angles run from +X of the panel towards +Y about the lens axis; about a panel's axis from its
/// upright side towards the right of one who looks seaward (-Y), so that line, 0 and a quarter are
/// right-handed.
std::vector<TurnedSolid::Plane> cutting_planes(const PlannedPrism& prism);

}  // namespace prismwright
