#pragma once

#include <string>
#include <vector>

#include "core/frame/frame_plan.h"

namespace prismwright {

/// A wall of brass between two pockets of a rib, or between a pocket and the rib's edge.
struct BrassWall {
  double wall_mm = 0;  ///< where it is thinnest; exact for the polygons, so within 0.005 mm
  PlatePoint at;       ///< the middle of that place
  std::size_t pocket = 0;
  std::optional<std::size_t> other_pocket;  ///< blank: the rib's edge
};

/// The walls thinner than `least_mm`, one for each two neighbours.
std::vector<BrassWall> thin_brass(const RibPlan& rib, double least_mm);

/// A warning for each, with place, value and limit. Its mark is left to the caller.
std::vector<FrameWarning> thin_brass_warnings(const RibPlan& rib, double least_mm);

}  // namespace prismwright
