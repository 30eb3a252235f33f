#pragma once

#include <vector>

#include "core/light/beam_map.h"

namespace prismwright {

/// What the sun does at the focus when it stands in the beam of a panel: the worst case, whatever the hour.
struct SunSpot {
  double diameter_mm = 0;  ///< of a ball about the focus
  double watts = 0;        ///< of sunlight that falls on it
  double kw_m2 = 0;        ///< over the ball's round
};
struct SunHazard {
  int panel = 0;        ///< that gathers most
  double image_mm = 0;  ///< width of the sun's image at the focal distance
  std::vector<SunSpot> spots;
  double worst_kw_m2 = 0;
  bool kindles = false;  ///< more than wood stands
};

/// Irradiance from which wood takes fire in time, kW/m2 (Babrauskas 2001).
inline constexpr double kWoodKindles_kw_m2 = 4.3;
/// Half the angle under which the sun is seen, degrees (from memory: 16 minutes of arc).
inline constexpr double kSunHalfAngle_deg = 0.267;

/// `sun_w_m2`: sunlight square to its rays. `aim_deg`: depression of the beam. By the reversal of rays: the
/// power on a ball is the sunlight times the aperture that would shine with the ball as its lamp.
SunHazard sun_hazard(const LightLens& lens, double focal_mm, const GlassRules& glass, double sun_w_m2,
                     double aim_deg);

}  // namespace prismwright
