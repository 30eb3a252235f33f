#pragma once

#include <string>

#include "core/frame/frame_plan.h"

namespace prismwright {

/// A key that is equal for ribs of the same outline, pockets and thicknesses (to 1e-4 mm), marks aside.
std::string rib_key(const RibPlan& rib);

}  // namespace prismwright
