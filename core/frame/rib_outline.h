#pragma once

#include <vector>

#include "core/frame/door_places.h"
#include "core/frame/plate_chain.h"
#include "core/frame/plate_polygons.h"

namespace prismwright {

/// How far a rib may reach, and what its edge must have.
struct RibLimits {
  double margin_mm = 8;  ///< brass round everything that the rib must hold; half a tab's width
  double least_u_mm = 0;
  double low_v_mm = 0;            ///< upper face of the bottom ring
  double high_v_mm = 0;           ///< lower face of the top ring
  double inside_radius_mm = 0.5;  ///< of the cutter
  std::vector<HeightRange> pads;  ///< heights at which the outer edge is one upright line
};

/// One closed plate round all of `held` (pockets, and the plain course of zones that end in no pocket): the
/// margin all round less 0.05 mm at most, narrow bays filled, parts that lie far apart joined by straight bars,
/// a tab up to the top ring and one down to the bottom ring. Cut off at the limits; its ends lie exactly in
/// them. Inside corners have at least the cutter's radius and half the margin. At a pad the outer edge stands
/// at the greatest u that it has near there. Empty when there is nothing to hold.
PlateChain rib_edge(const std::vector<PlateOutline>& held, const RibLimits& limits);

}  // namespace prismwright
