#pragma once

#include "core/lens/plan.h"

namespace prismwright {

/// The main measures of a lens.
struct LensSize {
  double height_mm = 0;           ///< from the lowest to the highest glass of the section
  double inside_diameter_mm = 0;  ///< across the flat inner faces: twice the focal distance
  double lowest_mm = 0;           ///< height of the lowest glass over the focal plane (negative)
  double highest_mm = 0;
};

/// Measures of the glass, within 0.01 mm; a plan without prisms has the height 0.
LensSize size_of(const LensPlan& plan);

}  // namespace prismwright
