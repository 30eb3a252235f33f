#pragma once

#include <algorithm>
#include <cmath>

#include "core/light/light_report.h"

namespace prismwright {

/// A bell over degrees, 1 in its middle.
inline double bell(double deg, double half_width_deg) {
  return std::exp(-std::log(2.0) * std::pow(deg / half_width_deg, 2));
}

/// A light report written down by hand, so that papers can be tried without tracing: a beam of bells of 20 000
/// cd, 2.4 deg wide and 3 deg high at half of its peak; the rhythm of such a beam before every panel that holds
/// prisms; round numbers for the rest.
inline LightReport hand_light(const LensPlan& plan) {
  LightReport light;
  light.flux_lm = 2000;
  light.luminance_cd_mm2 = 1.5;
  light.panel = 1;
  light.beam.grid = {-6, 0.25, 49, -5, 0.25, 41};
  light.beam.peak_cd = 20000;
  light.beam.peak_azimuth = 24;
  light.beam.peak_elevation = 20;
  light.beam.reached = true;
  for (int k = 0; k < light.beam.grid.elevations; ++k)
    for (int i = 0; i < light.beam.grid.azimuths; ++i)
      light.beam.cd.push_back(20000 * bell(light.beam.grid.azimuth_deg(i), 1.2) *
                              bell(light.beam.grid.elevation_deg(k), 1.5));
  light.half_width_deg = 2.4;
  light.half_height_deg = 3;
  light.budget.flux_lm = 2000;
  light.budget.lm[0] = 1500;
  light.budget.lm[5] = 500;
  for (const Zone& zone : plan.section.zones) light.budget.zones.push_back({zone.mark, 12.5, 0.5});
  for (std::size_t i = 0; i < plan.panels.size(); ++i) {
    PanelCurve curve;
    curve.axis_deg = plan.panels[i].axis_deg;
    curve.screen = plan.values.panels[i].screen;
    if (!plan.values.panels[i].blind) {
      curve.from_deg = -10;
      curve.step_deg = 0.1;
      for (int k = 0; k <= 200; ++k) curve.cd.push_back(20000 * bell(-10 + 0.1 * k, 1.2));
    }
    light.curves.push_back(curve);
  }
  light.rhythm = rhythm_of(light.curves, plan.values.light.turn_s, plan.values.light.turn_way);
  light.character = character_text(character_of(light.rhythm));
  light.outside_cd = 17000;
  light.service_cd = 12750;
  if (!light.rhythm.flashes.empty()) light.effective = light.rhythm.flashes.front().effective;
  light.nominal_range_nmi = 14.2;
  light.luminous_range_nmi = 14.2;
  light.geographic_range_nmi = 19.6;
  light.ranges = range_table(12750, {0.2, 0.25, 0.6}, kNightThreshold_lux);
  light.colours.lamp = {0.4476, 0.4074};
  light.colours.glass_mm = 21;
  for (const Screen screen : {Screen::none, Screen::red, Screen::green, Screen::yellow}) {
    ScreenColour colour;
    colour.screen = screen;
    colour.at = light.colours.lamp;
    for (const SignalRegion& region : signal_regions())
      if (region.colour == colour_word(screen))
        colour.regions.push_back({&region, region_margin(region, colour.at), holds(region, colour.at)});
    light.colours.screens.push_back(colour);
  }
  light.sun = {1, 2.33, {{1.2, 8.4, 7924.6}, {46.6, 83.6, 49.0}}, 13308.5, true};
  return light;
}

}  // namespace prismwright
