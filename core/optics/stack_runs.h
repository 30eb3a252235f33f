#pragma once

#include <vector>

#include "core/base/outcome.h"
#include "core/optics/stack_builder.h"

namespace prismwright {

/// A shorter entry side than this many lands could not carry them.
inline constexpr double kLeastSideInLands = 6;

inline constexpr int kMostPrisms = 80;          ///< of one stack
inline constexpr double kSameElevation = 1e-9;  ///< radians: nothing is left to serve

/// A run of prisms that a rule divides: from a place up to a limit, radians.
struct StackRun {
  StackPlace from;
  double limit = 0;
};

/// How a run is divided: so many prisms of one measure (side, area, height or thickness; mm or mm2).
struct RunSize {
  int prisms = 0;  ///< 0: as many as the measure asks for, the last cut short
  double measure = 0;
};

/// Divides runs by the task's rule. A count is shared out so that the greatest measure is as small as it can
/// be. Refuses a count smaller than the runs and locked prisms need, and a measure that no prism has.
Outcome<std::vector<RunSize>> share_out(const StackBuilder& builder, const std::vector<StackRun>& runs,
                                        int locked);

}  // namespace prismwright
