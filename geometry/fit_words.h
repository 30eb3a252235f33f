#pragma once

#include "geometry/fit_up.h"

namespace prismwright {

/// Fills in the words of every step and of what cannot go in.
void put_in_words(PanelFit& fit);

}  // namespace prismwright
