#pragma once

#include "core/frame/plate_polygons.h"

namespace prismwright {

/// What a round cutter leaves of a wish.
struct Relieved {
  PlateOutline outline;
  /// Somewhere the opening is narrower than the cutter: there it stays as it is.
  bool too_narrow = false;
};

/// The opening, widened just so far that a disc of `radius_mm` reaches every place of it: where an inside
/// corner is keener, the disc is led on from where it rests in the corner to the corner's tip, as a round
/// relief. Walls away from the corners stay where they are. Polygon within 0.002 mm.
///
/// A disc that rests at F reaches the tip A, |AF| > r, once it is led (|AF| - r) towards A; a corner arc of
/// less radius lies inside the disc that touches it at its tip. Own derivation.
Relieved relieved(const PlateOutline& opening, double radius_mm);

/// Whether a disc of that radius reaches all of the opening, within a hundredth of a millimetre.
bool reaches_all(const PlateOutline& opening, double radius_mm);

/// Strips of brass between openings, or within one, thinner than `thin_mm`, taken away. Corners stay as keen as
/// they are.
PlateRegion without_thin_brass(const PlateRegion& openings, double thin_mm);

}  // namespace prismwright
