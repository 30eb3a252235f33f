#pragma once

#include <vector>

#include "core/lens/plan.h"
#include "geometry/fit_up.h"

namespace prismwright {

/// What a maker may change so that the part goes in, all of it together; empty where no value is known to be at
/// fault. Where a reflecting band stands in the refracting one and is turned about another axis: to turn it as
/// that is, with the same focal point and aim. Elsewhere, where prisms stand in each other or in brass: the
/// room between them, larger by how deep they stand. Where a part is held up before it is off the rib: a pocket
/// shallower by the way that it lacks. Lengths are told as "about", for the prisms change with them.
std::vector<FitChange> changes_for(const FitBlocked& blocked, const PanelFit& fit, const LensPlan& plan);

}  // namespace prismwright
