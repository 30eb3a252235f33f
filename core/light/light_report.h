#pragma once

#include <string>
#include <vector>

#include "core/light/beam_map.h"
#include "core/light/character.h"
#include "core/light/flux_budget.h"
#include "core/light/range.h"
#include "core/light/sun_hazard.h"

namespace prismwright {

/// Shares that historic coloured glass lets through: red 40 %, green 25 % of white (Encyclopaedia Britannica
/// 1911, p. 636); yellow 60 % from memory.
inline constexpr ScreenFactors kHistoricScreens{0.40, 0.25, 0.60};
double factor_of(Screen screen);

/// What is asked of the light.
struct LightAsk {
  double elevation_deg = 0;                      ///< at which the observer stands, seen from the lens
  BeamGrid grid{-20, 0.25, 161, -10, 0.25, 81};  ///< of the beam's map, from the axis of the panel asked for
  int panel = 0;                                 ///< whose beam is mapped; 0: the first that holds prisms
  double wanted_error = 0.0025;
  long rays = 60000;  ///< of the flux budget
};

/// The light of a lens as drawn: worked out from the prisms, the brass and the lamp, at the design wavelength.
struct LightReport {
  double flux_lm = 0;           ///< of the lamp
  double luminance_cd_mm2 = 0;  ///< of its surface
  int panel = 0;                ///< whose beam is mapped
  BeamMap beam;                 ///< from that panel's axis, screen included; without glazing and service factor
  double half_width_deg = 0;    ///< of the beam between its half peaks, level and upright; 0: beyond the map
  double half_height_deg = 0;
  FluxBudget budget;
  std::vector<PanelCurve> curves;  ///< of each panel, round its axis at the observer's elevation
  Rhythm rhythm;                   ///< intensities of the lens alone
  std::string character;
  std::string differs;                ///< from the brief's character; empty: as wished, or none was
  std::vector<std::string> warnings;  ///< what the rules find at fault
  double outside_cd = 0;              ///< peak over the whole rhythm through the lantern's glazing
  double service_cd = 0;              ///< the same less the service factor
  EffectiveIntensities effective;     ///< of the strongest flash, service factor and glazing included
  double nominal_range_nmi = 0;       ///< from the effective intensity by Blondel and Rey
  double luminous_range_nmi = 0;      ///< the same at the visibility and threshold of the settings
  double geographic_range_nmi = 0;
  std::vector<RangeRow> ranges;  ///< of white light; factors of historic screens for colours
  SunHazard sun;
};

/// Works it all out. Refuses a lamp without size; fails too when stopped through `progress`. `watcher` is told
/// of the mapped beam as it sharpens.
Outcome<LightReport> light_report(const LensPlan& plan, const LightAsk& ask, const Progress& progress = {},
                                  const BeamWatcher& watcher = {});

}  // namespace prismwright
