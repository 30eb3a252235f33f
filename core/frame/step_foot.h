#pragma once

#include "core/frame/plate_chain.h"
#include "core/frame/plate_polygons.h"

namespace prismwright {

/// The place of a step that is nearest to a given one.
struct StepFoot {
  PlatePoint place;
  double from_end_mm = 0;  ///< no more than its way along the step to the nearer end; 0 at an end
};
StepFoot foot_on(const PlateStep& step, PlatePoint p);

/// Whether the bearing of a place from the arc's centre lies between those of the arc's ends, both included.
bool bears_on(const PlateStep& arc, PlatePoint p);

/// How far along an arc, in radians from its start in its own direction, the bearing of a place lies: 0 to 2
/// pi.
double along_arc(const PlateStep& arc, PlatePoint p);

/// The smallest upright rectangle round a step.
PlateExtent extent_of(const PlateStep& step);

/// How often a level line from a place towards greater u crosses the step, odd or even: a place lies inside
/// closed chains where the sum over all steps is odd.
int crossings_of(const PlateStep& step, PlatePoint p);

}  // namespace prismwright
