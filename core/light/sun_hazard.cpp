#include "core/light/sun_hazard.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"

namespace prismwright {

namespace {

/// Aperture that shines towards the sun's disc with a ball as the lamp, mm2, meaned over the disc.
double shining_aperture_mm2(const LightLens& lens, int panel, const GlassRules& glass, double ball_mm,
                            double aim_deg) {
  Lamp ball;
  ball.shape = LampShape::sphere;
  ball.width_mm = ball_mm;
  ball.known = LampKnown::luminance;
  ball.luminance_cd_mm2 = 1;
  const auto lamp = LampBody::make(ball);
  if (!lamp) return 0;
  constexpr int kAcross = 5;
  const double step = 2 * kSunHalfAngle_deg / (kAcross - 1);
  BeamRequest request;
  request.grid = {-kSunHalfAngle_deg, step, kAcross, -aim_deg - kSunHalfAngle_deg, step, kAcross};
  request.panel = panel;
  request.colours = {{glass, 1}};
  request.first_spots = 120;
  request.most_rounds = 2;
  const auto map = beam_map(lens, *lamp, request);
  if (!map) return 0;
  double sum = 0;
  int places = 0;
  for (int i = 0; i < kAcross; ++i) {
    for (int k = 0; k < kAcross; ++k) {
      const double off = std::hypot(map->grid.azimuth_deg(i), map->grid.elevation_deg(k) + aim_deg);
      if (off > kSunHalfAngle_deg * 1.001) continue;
      sum += map->at(i, k);
      ++places;
    }
  }
  return sum / places;
}

}  // namespace

SunHazard sun_hazard(const LightLens& lens, double focal_mm, const GlassRules& glass, double sun_w_m2,
                     double aim_deg) {
  SunHazard hazard;
  hazard.image_mm = 2 * focal_mm * std::tan(radians(kSunHalfAngle_deg));
  std::vector<int> kinds;  // numbers of panels of which no two are congruent
  for (std::size_t i = 0; i < lens.panels().size(); ++i) {
    const PanelInLight& panel = lens.panels()[i];
    if (!panel.bodies.empty() && panel.like == static_cast<int>(i)) kinds.push_back(panel.number);
  }
  if (kinds.size() == 1) hazard.panel = kinds.front();
  double most = 0;
  for (std::size_t i = 0; i < kinds.size() && kinds.size() > 1; ++i) {
    const double aperture = shining_aperture_mm2(lens, kinds[i], glass, 4 * hazard.image_mm, aim_deg);
    if (aperture <= most) continue;
    most = aperture;
    hazard.panel = kinds[i];
  }
  if (hazard.panel == 0) return hazard;
  for (const double times : {0.5, 1.0, 2.0, 4.0, 10.0, 20.0}) {
    SunSpot spot;
    spot.diameter_mm = times * hazard.image_mm;
    // W/m2 over mm2 is a millionth of a watt.
    spot.watts = sun_w_m2 * 1e-6 * shining_aperture_mm2(lens, hazard.panel, glass, spot.diameter_mm, aim_deg);
    spot.kw_m2 = 1e3 * spot.watts / (kPi / 4 * spot.diameter_mm * spot.diameter_mm);
    hazard.worst_kw_m2 = std::max(hazard.worst_kw_m2, spot.kw_m2);
    hazard.spots.push_back(spot);
  }
  hazard.kindles = hazard.worst_kw_m2 > kWoodKindles_kw_m2;
  return hazard;
}

}  // namespace prismwright
