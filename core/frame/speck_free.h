#pragma once

#include "core/frame/fit_rules.h"
#include "core/frame/plate_chain.h"

namespace prismwright {

/// A fitted chain without steps shorter than `rules.least_step_mm`, which no cutter follows and which only
/// rounding of polygons left: what stands before and after them runs on to a corner, or is joined by two arcs
/// that touch both. No place departs by more than `rules.within_mm`, and no arc gets a radius under the least.
/// What finds no room stays.
PlateChain speck_free(PlateChain chain, const FitRules& rules);

}  // namespace prismwright
