#pragma once

#include <string>
#include <vector>

#include "core/frame/plate_chain.h"
#include "core/lens/plan.h"

namespace prismwright {

/// One prism on the unrolled lens: mm, u to the right as seen from outside, v up.
struct UnrolledPrism {
  std::string mark;
  std::vector<PlateChain> loops;  ///< anticlockwise; a hole runs clockwise
  PlatePoint middle;              ///< a place inside, for its sign
  PlatePoint right;               ///< a place inside towards its right end, where a leader to it may begin
};

/// One panel seen from outside, the focal plane at v = 0 and the panel's axis at u = 0.
struct UnrolledPanel {
  int number = 1;
  bool blind = false;
  PlatePoint low;  ///< what the panel takes on the chart; all panels take the same height
  PlatePoint high;
  std::vector<UnrolledPrism> prisms;  ///< in the order of the plan
};

/// The lens unrolled, panel by panel: each prism drawn where the light leaves it (outer or exit face), so that
/// prisms do not cover each other. Bull's-eye panels are seen along their axis, belt panels laid flat at the
/// focal distance.
std::vector<UnrolledPanel> unrolled(const LensPlan& plan);

}  // namespace prismwright
