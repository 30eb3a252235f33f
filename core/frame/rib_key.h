#pragma once

#include <string>

#include "core/frame/frame_plan.h"

namespace prismwright {

/// A key that is equal for ribs of the same outline, pockets and thicknesses (to 1e-4 mm), marks aside.
std::string rib_key(const RibPlan& rib);
/// The same for a rib as it is drawn: left and right ribs differ unless they are the same plate.
std::string rib_plate_key(const FlatPart& part);

}  // namespace prismwright
