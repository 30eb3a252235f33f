#include <fmt/format.h>

#include "core/papers/light_paper.h"

namespace prismwright {

std::string beam_csv(const BeamMap& beam) {
  std::string text = "azimuth_deg,elevation_deg,intensity_cd\n";
  for (int k = 0; k < beam.grid.elevations; ++k)
    for (int i = 0; i < beam.grid.azimuths; ++i)
      text += fmt::format("{},{},{}\n", beam.grid.azimuth_deg(i), beam.grid.elevation_deg(k), beam.at(i, k));
  return text;
}

}  // namespace prismwright
