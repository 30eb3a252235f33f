#pragma once

#include <functional>
#include <vector>

#include "core/frame/plate_chain.h"
#include "core/optics/profile.h"

namespace prismwright {

/// A smooth curve of a plane by one parameter.
struct SmoothCurve {
  std::function<PlatePoint(double)> place;
  std::function<PlatePoint(double)> slope;  ///< forward along the curve; of any length but 0
  double from = 0;
  double to = 1;
};

/// The curve as lines and arcs that touch each other, ends and slopes kept, none of them farther from it than
/// `within_mm`, measured at sixteen places of each pair. Pairs are halved where they depart farther, a thousand
/// times at most. An arc comes out as two of its own circle, a straight line as two straight steps.
PlateChain arcs_along(const SmoothCurve& curve, double within_mm);

/// The arc that leaves `from` along `slope` and ends at `to`; straight where it leaves its chord by less than
/// 1e-9 mm.
PlateStep arc_from(PlatePoint from, PlatePoint slope, PlatePoint to);

/// The outline of a prism as steps, r as u and z as v: straight faces and arcs as they are, true curves within
/// `within_mm`. Anticlockwise as the profile is.
PlateChain section_chain(const Profile& profile, double within_mm);

}  // namespace prismwright
