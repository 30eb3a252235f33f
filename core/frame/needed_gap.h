#pragma once

#include <string_view>

#include "core/lens/plan.h"

namespace prismwright {

/// Growth of brass in length, 1/K. Source: works handbook value noted with the project's sources, 2.05e-5.
inline constexpr double kBrassExpansion_per_k = 2.05e-5;

/// Growth in length of a lens material, 1/K, by its key word: acrylic 7e-5 (handbooks 6.7e-5 to 8e-5); crown
/// 9e-6 (soda glass, from memory); n-bk7 7.1e-6 (from memory). An unknown material counts as acrylic, which
/// grows most.
double expansion_per_k(std::string_view material);

/// How much farther than the brass round it one end of a prism moves from its middle, mm, when the frame's
/// temperature changes by its whole range: half the extent times the difference of the two growths.
///
/// A prism is held by its middle, so half of its length goes to each end, and half of its greatest section
/// extent to each side. Between two prisms the needed gap is the sum of both. Own derivation; check: 300 mm
/// of acrylic in brass over 30 K grow 0.445 mm in all.
double needed_gap_mm(double extent_mm, std::string_view material, double heat_range_k);

/// Greatest distance between two points of a prism's section, mm (chords within 0.1 mm).
double section_extent_mm(const Profile& profile);

}  // namespace prismwright
