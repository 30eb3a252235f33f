#pragma once

#include <functional>
#include <optional>

#include "core/frame/plate_chain.h"

namespace prismwright {

/// What a fitted chain must keep beside its allowance.
struct FitRules {
  double within_mm = 0.004;
  double corner_deg = 12;
  /// Corners that turn right, where they count from a lesser turn already.
  std::optional<double> right_corner_deg = std::nullopt;
  /// No arc that turns left (anticlockwise), or right, is given a lesser radius. What the polygon itself bends
  /// more keenly cannot be helped.
  double least_left_radius_mm = 0;
  double least_right_radius_mm = 0;
  /// Steps shorter than this are taken in by their neighbours where the allowance has room; 0: none are.
  double least_step_mm = 0;
  /// Edges of the polygon that stay exactly as they are, a straight step each; none when blank.
  std::function<bool(PlatePoint from, PlatePoint to)> keeps_edge;
};

/// As fitted_chain(outline, within, corner), with more rules.
PlateChain fitted_chain(const PlateOutline& outline, const FitRules& rules);

}  // namespace prismwright
