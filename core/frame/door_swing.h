#pragma once

#include <optional>

#include "core/frame/door_side.h"

namespace prismwright {

/// How much room a door wants at its latch side so that it can swing out. mm.
///
/// Seen from above the hinge stands h from the plane of the latch side, and f from the lens axis along that
/// plane. What lies at u < f of that plane swings towards the neighbour before it swings out, on a circle about
/// the hinge that goes h - sqrt(h^2 - (f - u)^2) beyond where it began. A door whose ribs reach far in towards
/// the lens axis cannot open unless its panel is wide. Own derivation.
struct LatchRoom {
  double needed_mm = 0;   ///< infinite where no gap frees the door
  double least_u_mm = 0;  ///< how far in the latch side's rib reaches
};
LatchRoom latch_room(const RibPlan& latch_rib, SpacePoint hinge);

}  // namespace prismwright
