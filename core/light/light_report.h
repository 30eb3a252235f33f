#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/light/beam_map.h"
#include "core/light/character.h"
#include "core/light/flux_budget.h"
#include "core/light/horizon.h"
#include "core/light/light_colours.h"
#include "core/light/range.h"
#include "core/light/sun_hazard.h"

namespace prismwright {

/// What is asked of the light.
struct LightAsk {
  double elevation_deg = 0;                      ///< at which the observer stands, seen from the lens
  BeamGrid grid{-20, 0.25, 161, -10, 0.25, 81};  ///< of the beam's map, from the axis of the panel asked for
  int panel = 0;                                 ///< whose beam is mapped; 0: the first that holds prisms
  double wanted_error = 0.0025;
  long rays = 60000;  ///< of the flux budget
  int lines = 3;      ///< wavelengths that stand for the lamp's light (trace_lines.h)
};

/// The colours of a lens's light, at the peak of the mapped beam.
struct LightColours {
  Chromaticity lamp;             ///< before all glass
  double glass_mm = 0;           ///< mean path inside the prisms
  double tint_factor = 1;        ///< share of the lamp's light that the material leaves over that path
  std::vector<double> lines_nm;  ///< wavelengths that were traced
  /// Of light without a screen and behind red, green and yellow, in this order, whether or not a panel has it.
  std::vector<ScreenColour> screens;

  [[nodiscard]] const ScreenColour& of(Screen screen) const {
    return screens[static_cast<std::size_t>(screen)];
  }
};

/// The light of a lens as drawn: worked out from the prisms, the brass and the lamp.
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
  std::optional<Horizon> horizon;  ///< of belt work that stands still
  std::string character;
  std::string differs;                ///< from the brief's character; empty: as wished, or none was
  std::vector<std::string> warnings;  ///< what the rules find at fault
  double outside_cd = 0;              ///< peak over the whole rhythm through the lantern's glazing
  double service_cd = 0;              ///< the same less the service factor
  EffectiveIntensities effective;     ///< of the strongest flash, service factor and glazing included
  double nominal_range_nmi = 0;       ///< from the effective intensity by Blondel and Rey
  double luminous_range_nmi = 0;      ///< the same at the visibility and threshold of the settings
  double geographic_range_nmi = 0;
  std::vector<RangeRow> ranges;  ///< of the strongest flash without its screen, and behind each screen
  LightColours colours;
  SunHazard sun;
};

/// Works it all out. Refuses a lamp without size and spectra that cannot be read; fails too when stopped
/// through `progress`. `watcher` is told of the mapped beam as it sharpens.
Outcome<LightReport> light_report(const LensPlan& plan, const LightAsk& ask, const Progress& progress = {},
                                  const BeamWatcher& watcher = {});

}  // namespace prismwright
