#pragma once

#include <string>
#include <vector>

#include "core/optics/band_settings.h"
#include "core/optics/fate.h"

namespace prismwright {

/// A strip of the level beam, by height z in mm: where the light leaves the glass, for a beam aimed up or down
/// followed along its aim to the outermost glass of the lens.
struct BeamStrip {
  double from_mm = 0;
  double to_mm = 0;
};

/// A strip of the level beam and what lights it. Strips of arcs may overlap a little.
struct LightStrip {
  double from_mm = 0;
  double to_mm = 0;
  std::string zone;  ///< empty where it is dark

  [[nodiscard]] bool dark() const { return zone.empty(); }
};

/// Elevations over which the lamp's light fares alike.
struct LampStrip {
  Band band = Band::refracting;  ///< from whose focal point they are seen (see SweepRange)
  double from_deg = 0;
  double to_deg = 0;
  std::string zone;  ///< that takes the light, or the rib that stops it; empty when it meets neither
  Fate fate = Fate::escaped;
  LossCause cause = LossCause::none;
};

/// The lit strips with the dark ones between them, rising; dark ones narrower than 0.001 mm are left out.
std::vector<LightStrip> with_dark_between(std::vector<LightStrip> lit);

}  // namespace prismwright
