#pragma once

#include "core/frame/plate_polygons.h"

namespace prismwright {

/// Minkowski sum of two outlines, filled: every p + q with p inside `a` and q inside `b`. Both are simple
/// polygons, anticlockwise. Coordinates are kept to 1e-5 mm.
///
/// By the convolution of their tracings (Guibas, Ramshaw, Stolfi: A kinetic framework for computational
/// geometry, 1983; cited from memory): a corner of one goes along those edges of the other whose direction it
/// turns through, backwards where it turns right. The winding number about x counts the pieces that `a` and x -
/// `b` have in common, so that everything with a winding number above 0 is the sum.
PlateRegion outline_sum(const PlateOutline& a, const PlateOutline& b);

/// Places of the origin of `shape` at which it lies wholly inside `room`, by the same means: `room` is traced
/// backwards, so that the winding number is the pieces of the shape outside of the room less one.
PlateRegion places_inside(const PlateOutline& room, const PlateOutline& shape);

}  // namespace prismwright
