#pragma once

#include "core/drawing/lengths.h"
#include "geometry/fit_up.h"

namespace prismwright {

/// Fills in the words of every step and of what cannot go in, with lengths as they are wanted.
void put_in_words(PanelFit& fit, LengthWords lengths = {});

}  // namespace prismwright
