#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "core/lens/plan.h"
#include "core/lens/quantities.h"

namespace prismwright {

/// Lenses that between them hold every kind of prism.
inline LensValues fourth_order_bullseye(Faces faces) {
  LensValues values = starting_values("4", Work::bullseye, 8);
  values.section.faces = faces;
  return values;
}

inline LensValues sixth_order_belt(Faces faces) {
  LensValues values = starting_values("6", Work::belt, 6);
  values.section.faces = faces;
  return values;
}

/// Unequal panels, one with its axis off its middle, one blind: a first-order group-flashing lens.
inline LensValues first_order_unequal(Faces faces) {
  LensValues values = starting_values("1", Work::bullseye, 4);
  values.section.faces = faces;
  values.panels = {{60, 0, false}, {60, 0, false}, {100, 8, false}, {140, 0, true}};
  return values;
}

/// Two panels of 180 degrees, whose two sides are one plane.
inline LensValues two_panels(Work work, Faces faces) {
  LensValues values = starting_values("6", work, 2);
  values.section.faces = faces;
  return values;
}

/// A lens 60 m over the sea whose beam is aimed at the sea horizon.
inline LensValues aimed_at_the_horizon(LensValues values) {
  values.brief.height_m = 60;
  values.section.aim_at = AimAt::horizon;
  return values;
}

/// A bull's-eye whose bands are each aimed by themselves, the upper from a focal point of its own, the lower
/// turned about the lens axis.
inline LensValues every_band_its_own_way() {
  LensValues values = fourth_order_bullseye(Faces::true_curve);
  values.section.refracting.aim_deg = 0.6;
  values.section.upper.aim_deg = 2;
  values.section.upper.focus_z_mm = 3;
  values.section.lower.turning = BandTurning::lens;
  values.section.lower.aim_deg = -0.3;
  return values;
}

/// Parts of 180 deg a panel, a panel with its axis near its own side, and a narrow one.
inline LensValues lopsided_belt() {
  LensValues values = starting_values("6", Work::belt, 3);
  values.panels = {{180, 60, false}, {20, 0, false}, {160, -20, false}};
  return values;
}

inline LensValues lopsided_bullseye() {
  LensValues values = starting_values("6", Work::bullseye, 3);
  values.panels = {{120, 40, false}, {60, -5, false}, {180, 0, false}};
  return values;
}

/// The first prism of every distinct shape.
inline std::vector<const PlannedPrism*> distinct_prisms(const LensPlan& plan) {
  std::vector<const PlannedPrism*> distinct;
  std::vector<std::string> keys;
  for (const PlannedPrism& prism : plan.prisms) {
    if (std::find(keys.begin(), keys.end(), prism.shape_key) != keys.end()) continue;
    keys.push_back(prism.shape_key);
    distinct.push_back(&prism);
  }
  return distinct;
}

}  // namespace prismwright
