#pragma once

#include <vector>

#include "core/lens/plan.h"
#include "core/lens/zone_glass.h"

namespace prismwright {

/// The glass of every zone of the section, in its order, as all panels hold it: volumes by trimmed_volume_mm3,
/// so that no solid need be made. Zones that no panel holds have no pieces. Congruent prisms are worked out
/// once.
std::vector<ZoneGlass> glass_by_zone(const LensPlan& plan);

}  // namespace prismwright
