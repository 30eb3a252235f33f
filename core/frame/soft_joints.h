#pragma once

#include "core/frame/fit_rules.h"
#include "core/frame/plate_step.h"

namespace prismwright {

/// Two arcs that touch each other and both given unit headings, with equal legs d: |V - d (T0 + T1)| = 2 d, V
/// the chord. Own derivation.
PlateChain touching_pair(PlatePoint from, PlateVector first, PlatePoint to, PlateVector last);

/// Joints at which a fitted chain turns by more than it may where there is no corner, rounded off by two arcs
/// that touch their neighbours: within a thousandth of a millimetre or two, or where steps have a least length
/// (FitRules::least_step_mm) within the tangent of a quarter of the turn times that length. What finds no room
/// stays.
PlateChain soft_joints(PlateChain chain, const FitRules& rules);

}  // namespace prismwright
