#pragma once

#include "core/lens/plan.h"

namespace prismwright {

/// Sizes of one prism that time and money are reckoned by. Of the prism itself, without shrinkage and stock.
struct PieceSize {
  double volume_mm3 = 0;
  double optical_mm2 = 0;   ///< faces that are polished: inner, outer, entry, exit, reflecting
  double thickness_mm = 0;  ///< thickest section: the zone's section_thickness_mm
  double width_mm = 0;      ///< of a box round it, across the panel (Y)
  double depth_mm = 0;      ///< along the panel's level axis (X)
  double height_mm = 0;     ///< upwards
};

/// Integrals over the profile of the part of each circle that the trim leaves (Pappus's rule, circle by
/// circle): volume and areas within 1e-4 of themselves, box within 0.05 mm. Always finite; what the trim takes
/// away whole has size 0.
PieceSize piece_size(const LensPlan& plan, const PlannedPrism& prism);

}  // namespace prismwright
