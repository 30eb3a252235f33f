#pragma once

#include <string>

#include "core/frame/frame_parts.h"

namespace prismwright {

/// Keys that are equal for parts of the same make, metal and geometry (to 1e-4 mm) in their own frames, marks
/// and places aside. Holes count in the order in which they stand.
std::string part_key(const FlatPart& part);
std::string part_key(const RoundPart& part);
/// Of a turned bar, where its bores lie too.
std::string part_key(const TurnedBar& part);
/// Of a turned bar without bores: what PlannedPrism::shape_key holds for it.
std::string bar_shape_key(const PlannedPrism& shape);

}  // namespace prismwright
