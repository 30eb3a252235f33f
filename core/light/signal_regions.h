#pragma once

#include <string_view>
#include <vector>

#include "core/light/eye.h"

namespace prismwright {

/// A published region of signal colour in the CIE 1931 diagram: its corners in order round it.
struct SignalRegion {
  std::string_view colour;  ///< "white", "red", "green", "yellow"
  std::string_view rule;    ///< the publication
  std::vector<Chromaticity> corners;
};

/// The rule whose regions an aid to navigation is judged by.
inline constexpr std::string_view kAidsToNavigation = "33 CFR 66.01-11(5)";

/// 33 CFR 66.01-11(5): white, green, red, yellow; COLREG 1972 Annex I 7: red.
const std::vector<SignalRegion>& signal_regions();

/// Corners are published with three digits; a colour that misses a side by half of the last counts as inside.
inline constexpr double kRegionRounding = 0.0005;

/// Distance in x, y from a region's boundary: positive inside, negative outside.
double region_margin(const SignalRegion& region, const Chromaticity& at);
/// Whether the region holds the colour, its boundary included (kRegionRounding).
bool holds(const SignalRegion& region, const Chromaticity& at);
/// Whether two sides of the closed outline cross or touch other than at the corner that neighbours share.
bool crosses_itself(const std::vector<Chromaticity>& corners);

}  // namespace prismwright
