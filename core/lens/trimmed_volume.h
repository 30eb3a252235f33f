#pragma once

#include "core/lens/plan.h"

namespace prismwright {

/// Volume of a trimmed ring by quadrature over its section, independent of the solid modeller, mm3 (within
/// 1e-6 of the volume; true curves as their cubic pieces).
///
/// The volume is the integral over the section of (distance from the turning line) x (kept angle) dr dz. Along
/// r it is taken in closed form, along the outline by Gauss's rule (Green's theorem). About an axis that dips:
/// dipping_volume.h.
double trimmed_volume_mm3(const PlannedPrism& prism);

}  // namespace prismwright
