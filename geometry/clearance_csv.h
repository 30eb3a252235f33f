#pragma once

#include <string>
#include <vector>

#include "geometry/clearances.h"

namespace prismwright {

/// A table of clearances, one line each under a line of heads: first, second, kind, gap_mm, needed_mm,
/// overlap_mm3, verdict, then both nearest points in the lens frame.
std::string clearances_csv(const std::vector<Clearance>& clearances);

}  // namespace prismwright
