#pragma once

#include "core/optics/proof.h"

namespace prismwright {

/// A lamp as an upright line on the lens axis that shines evenly over its height and by Lambert's cosine law: a
/// thin upright cylinder.
struct LampLine {
  double height_mm = 0;  ///< of what shines; 0: a point that still follows the cosine law
  double above_mm = 0;   ///< its middle over the principal focal point
};

/// What becomes of a lamp line's light. Shares are of the light that its points send between the lowest and the
/// highest glass, as each point sees them (cos^2 t dt); they add to 1. A fate is `level` within the level
/// tolerance of the band's aim.
struct LampLineProof {
  LampLine lamp;
  double share[kFates] = {};
  double share_of_lamp = 0;      ///< what the section takes of all the light of the lamp, above and below
  double own_way = 0;            ///< share that leaves by the zones' own way, in whatever direction
  double within = 0;             ///< of that, the part within the level tolerance of its aim
  double rms_departure_deg = 0;  ///< of that, from the aim
  double lowest_departure_deg = 0;
  double highest_departure_deg = 0;

  [[nodiscard]] double of(Fate fate) const { return share[static_cast<int>(fate)]; }
};

/// Sums sweeps of at least `elevations` rays from places on the lamp: Gauss's rule with `points` places for
/// each part of its height. The parts are short near the focal points of the bands, where light goes from level
/// to stray within a few mm. A lamp within a twentieth of the focal distance takes about 40 sweeps.
LampLineProof prove_lamp(const Section& section, const LampLine& lamp, int points = 3, int elevations = 300);

}  // namespace prismwright
