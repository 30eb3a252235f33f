#pragma once

#include "core/lens/trimmed_ring.h"

namespace prismwright {

/// Volume of a ring about an axis that dips, mm3, within 1e-8 of itself beside the chords of its outline.
///
/// At each angle about the axis the leaning side planes and the level plane cut the section along straight
/// lines, so what is kept is a clipped polygon whose moment about the axis is exact; the moments are summed
/// over the angle by Gauss's and Kronrod's rule, halving where the two disagree, between the angles at which a
/// face of the section first and last meets a plane.
double dipping_volume_mm3(const TrimmedRing& ring, double chord_mm);

}  // namespace prismwright
