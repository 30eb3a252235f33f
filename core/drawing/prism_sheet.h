#pragma once

#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/drawing/house_words.h"
#include "core/drawing/line_view.h"
#include "core/lens/plan.h"
#include "core/works/congruence.h"

namespace prismwright {

/// What only the solid of a prism tells.
struct PrismSolidFacts {
  double volume_mm3 = 0;
  double mass_g = 0;
  /// In the frame of the panel: x along its axis seaward, y to the left seen from the lamp, z up.
  LineView from_sea;  ///< seen along the panel's axis from the sea: y of the panel to the right, z up
  LineView from_end;  ///< the end at the anticlockwise side, seen square to that side plane
};

/// A sheet (or more, where the tables are long) for one kind of prism: its section to scale with lettered
/// corners (core/works/section_corners.h) and which face is which; end view and view from the sea; every corner
/// with its coordinates from axis and focal plane; every face with radius and centre, or a table of offsets
/// from the chord for a true curve; length, mass, volume; tolerances; the marks that use it. Texts never cover
/// each other, nor the border.
Outcome<Drawing> prism_sheet(const LensPlan& plan, const Master& kind, const PrismSolidFacts& facts,
                             const HouseWords& words);

}  // namespace prismwright
