#pragma once

#include "core/optics/section_pieces.h"

namespace prismwright {

/// Takes in the rays of a sweep, rising in elevation.
class SweepWitness {
 public:
  virtual ~SweepWitness() = default;
  /// A ray that stands for the light between two elevations (radians). The two are equal for a ray at the very
  /// end of a run, which stands for no light but shows how far the run goes.
  virtual void see(const TracedRay& ray, double from, double to) = 0;
};

/// Traces rays of one view between two elevations, radians: `rays_per_radian`, evenly spread between the
/// corners of glass and metal, and one just inside each corner. Each stands for the light up to the middle
/// between it and its neighbour, or up to the place where the two part ways, found by halving to a 16 000th of
/// their spacing. Answers how many rays stand for light.
int sweep_light(const SectionPieces& section, const SectionView& view, SeenSpan span, double rays_per_radian,
                SweepWitness& witness);

}  // namespace prismwright
