#pragma once

#include <functional>

#include "core/frame/plate_chain.h"

namespace prismwright {

/// What a fitted chain must keep beside its allowance.
struct FitRules {
  double within_mm = 0.004;
  double corner_deg = 12;
  /// No arc that turns left (anticlockwise), or right, is given a lesser radius. What the polygon itself bends
  /// more keenly cannot be helped.
  double least_left_radius_mm = 0;
  double least_right_radius_mm = 0;
  /// Edges of the polygon that stay exactly as they are, a straight step each; none when blank.
  std::function<bool(PlatePoint from, PlatePoint to)> keeps_edge;
};

/// As fitted_chain(outline, within, corner), with more rules.
PlateChain fitted_chain(const PlateOutline& outline, const FitRules& rules);

}  // namespace prismwright
