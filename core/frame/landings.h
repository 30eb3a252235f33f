#pragma once

#include <string>
#include <vector>

#include "core/frame/frame_plan.h"

namespace prismwright {

/// How a prism rests in one rib: on the wall of its pocket that lies under it.
struct Landing {
  std::string rib;
  std::string prism;
  /// How far the prism's end reaches into the pocket: the length of bearing along the prism.
  double reach_mm = 0;
  /// How much of its end, seen from above, has the pocket's wall under it at the setting gap: the width of
  /// bearing across the prism. 0 for a prism that has only other prisms under it.
  double width_mm = 0;
};

/// Of every prism that ends in a pocket of the rib. Within 0.05 mm of width.
std::vector<Landing> landings_of(const RibPlan& rib, const LensPlan& plan);
/// Of all ribs; congruent ribs are worked out once.
std::vector<Landing> landings(const FramePlan& frame, const LensPlan& plan);

/// Warns of prisms that reach less than `least_mm` into their pockets, and of pockets whose prisms have
/// altogether less than that width under them. The marks of the warnings are left to the caller.
std::vector<FrameWarning> landing_warnings(const RibPlan& rib, const LensPlan& plan, double least_mm);

}  // namespace prismwright
