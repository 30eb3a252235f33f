#pragma once

#include <cmath>

#include "core/base/angle.h"

namespace prismwright {

/// Distance of the sea horizon from a height, nautical miles: 1.147 sqrt(height in feet), refraction of the air
/// included. Published: Encyclopaedia Britannica, 11th ed. (1911), vol. 16, Table III.
inline double horizon_distance_nm(double height_m) { return 1.147 * std::sqrt(height_m / 0.3048); }

/// Depression of the sea horizon seen from a height, degrees. The line of sight bends so that it touches the
/// sea at the horizon: its depression at the eye is 2 h / distance (derived from the table above).
inline double horizon_dip_deg(double height_m) {
  constexpr double kNauticalMile_m = 1852;
  if (height_m <= 0) return 0;
  return degrees(2 * height_m / (horizon_distance_nm(height_m) * kNauticalMile_m));
}

}  // namespace prismwright
