#pragma once

#include <cstddef>

namespace prismwright {

/// Directions far from the lens, evenly spaced, degrees: azimuth anticlockwise from the axis of panel 1 (or
/// from the panel's own axis), elevation up.
struct BeamGrid {
  double azimuth_from_deg = -10;
  double azimuth_step_deg = 0.25;
  int azimuths = 81;
  double elevation_from_deg = -5;
  double elevation_step_deg = 0.25;
  int elevations = 41;

  [[nodiscard]] std::size_t size() const {
    return static_cast<std::size_t>(azimuths) * static_cast<std::size_t>(elevations);
  }
  [[nodiscard]] double azimuth_deg(int i) const { return azimuth_from_deg + i * azimuth_step_deg; }
  [[nodiscard]] double elevation_deg(int k) const { return elevation_from_deg + k * elevation_step_deg; }
  [[nodiscard]] std::size_t at(int i, int k) const {
    return static_cast<std::size_t>(k) * static_cast<std::size_t>(azimuths) + static_cast<std::size_t>(i);
  }
};

}  // namespace prismwright
