#pragma once

#include <set>
#include <string>

#include "core/lens/plan.h"

namespace prismwright {

/// Marks of the refracting rings ("R1") that are one piece all round in every panel: their prisms have no "a"
/// and no "b".
std::set<std::string> whole_rings(const LensPlan& plan);

}  // namespace prismwright
