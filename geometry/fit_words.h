#pragma once

#include "core/drawing/lengths.h"
#include "geometry/fit_up.h"

namespace prismwright {

/// Fills in the words of every step and of what cannot go in, with lengths as they are wanted.
///
/// Ways and hold-ups are told to 0.1 mm, depths to 0.01 mm (in inches all to 0.001 in). Of a value that is to
/// be changed, what it is and what it is to be are told to 0.01 mm or 0.001 in and never alike; in inches what
/// it is to be is rounded away from what it is. Angles and choices are told with the unit of their quantity.
void put_in_words(PanelFit& fit, LengthWords lengths = {});

}  // namespace prismwright
