#pragma once

#include "core/frame/plate_polygons.h"

namespace prismwright {

/// Where a shape may stand. All places are those of the shape's own origin; the shape is a simple polygon,
/// anticlockwise, and is not turned. Coordinates are kept to 1e-5 mm.

/// Places at which the shape would share ground with `fixed`, one outer outline that may have holes: a shape
/// small enough may stand in one.
PlateRegion places_that_meet(const PlateRegion& fixed, const PlateOutline& shape);

/// Places at which the whole shape lies within the room, whose pieces may have holes.
PlateRegion places_within(const PlateRegion& room, const PlateOutline& shape);

/// Every point of the region turned by `turn_rad` about the origin, then moved.
PlateRegion moved(const PlateRegion& region, double turn_rad, PlatePoint shift);

/// The middle of the roomiest place of a region that is not empty: the point that is farthest from its edges,
/// within about `within_mm`.
PlatePoint roomiest_point(const PlateRegion& region, double within_mm);

}  // namespace prismwright
