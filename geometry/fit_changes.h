#pragma once

#include <vector>

#include "core/lens/plan.h"
#include "geometry/fit_up.h"

namespace prismwright {

/// What a maker may change so that the part goes in, the likeliest first, each for itself; empty where no
/// single value is at fault. Where bands that are turned about different axes stand in each other: to turn one
/// as the other. Where prisms stand in each other or in brass: the room between them, larger by how deep they
/// stand. Where a part is held up before it is off the rib: a pocket shallower by the way that it lacks.
/// Lengths to 0.1 mm; they are told as "about", for the prisms change with them.
std::vector<FitChange> changes_for(const FitBlocked& blocked, const PanelFit& fit, const LensPlan& plan);

}  // namespace prismwright
