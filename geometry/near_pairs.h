#pragma once

#include <vector>

#include "core/lens/plan.h"
#include "geometry/measured_part.h"

namespace prismwright {

/// Two parts whose gap is wanted, as places in the list of parts.
struct WantedPair {
  std::size_t first = 0;
  std::size_t second = 0;
  double no_farther_mm = 0;  ///< a gap that is greater is not told
  bool joint = false;  ///< the plan means them to touch; of a screw or dowel, also what its holder touches
};

/// Metal parts whose boxes come as near to a prism are measured against it, mm.
inline constexpr double kNear_mm = 25;
/// Prisms that are no planned neighbours (of other panels, or a prism out of its place) are told from here on.
inline constexpr double kNearPrisms_mm = 3;
/// Metal parts to each other.
inline constexpr double kNearMetal_mm = 1;

/// Least distance of the boxes that two parts stand in, each in the frame in which its part was made, mm; 0
/// where they meet. The parts' own distance is no less.
double box_distance_mm(const MeasuredPart& first, const MeasuredPart& second);

/// Every planned pair of neighbouring prisms, every prism with the ribs of its panel, every joint, and whatever
/// else stands within the reaches above by its boxes.
std::vector<WantedPair> near_pairs(const LensPlan& plan, const FramePlan& frame,
                                   const std::vector<MeasuredPart>& parts);

}  // namespace prismwright
