#pragma once

#include <vector>

#include "core/frame/plate_step.h"

namespace prismwright {

/// Where the lines or circles that two steps lie on meet, wherever the steps end: none, one or two places.
/// Lines that turn by less than 1e-5 rad meet nowhere.
std::vector<PlatePoint> carriers_meet(PlateStep a, PlateStep b);

}  // namespace prismwright
