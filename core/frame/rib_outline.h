#pragma once

#include <vector>

#include "core/frame/plate_polygons.h"

namespace prismwright {

/// How far a rib may reach.
struct RibLimits {
  double margin_mm = 8;  ///< brass round everything that the rib must hold; half a tab's width
  double least_u_mm = 0;
  double low_v_mm = 0;   ///< upper face of the bottom ring
  double high_v_mm = 0;  ///< lower face of the top ring
};

/// One closed plate round all of `held` (pockets, and the plain course of zones that end in no pocket): the
/// margin all round, narrow bays filled, parts that lie far apart joined by straight bars, a tab up to the top
/// ring and one down to the bottom ring. Cut off at the limits. Empty when there is nothing to hold.
PlateOutline rib_outline(const std::vector<PlateOutline>& held, const RibLimits& limits);

}  // namespace prismwright
