#pragma once

#include <functional>
#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/base/progress.h"
#include "core/light/beam_grid.h"
#include "core/light/beam_patch.h"

namespace prismwright {

/// One colour of light to trace with, and its share of the luminous flux.
struct BeamColour {
  GlassRules glass;
  double weight = 1;
};

/// What is asked of a beam.
struct BeamRequest {
  BeamGrid grid;
  int panel = 0;  ///< number of the one panel asked for, its axis at azimuth 0; 0: the whole lens
  std::vector<BeamColour> colours;    ///< at least one; weights add to 1. Spots take them in turn
  std::vector<double> panel_factors;  ///< of each panel, for its screen; empty: all 1
  double wanted_error = 0.0025;       ///< rms over the grid as a share of the peak at which to stop
  double wanted_peak_error = 0.0025;  ///< of the peak alone; both must be met
  int first_spots = 300;              ///< of each panel's aperture in the first round of each of 4 sets
  int most_rounds = 64;
};

/// Intensities over a grid, cd.
struct BeamMap {
  BeamGrid grid;
  std::vector<double> cd;  ///< grid.at(azimuth, elevation)
  double peak_cd = 0;      ///< greatest of the grid
  int peak_azimuth = 0;    ///< its place
  int peak_elevation = 0;
  double error = 0;  ///< standard error, rms over the grid as a share of the peak: from four independent sets
  /// Of the peak, as a share of it: noise of the lit directions, and how much of the peak is owed to being the
  /// greatest of many noisy values (what sets that did not choose it make of it).
  double peak_error = 0;
  bool reached = false;  ///< both wanted errors were met before the rounds ran out
  double bound_cd = 0;   ///< no direction can have more: luminance times the whole aperture seen from there
  long spots = 0;        ///< of the aperture, that were worked out
  long exact_spots = 0;  ///< of these, those traced ray by ray because they lie at an edge
  double glass_mm = 0;   ///< mean path inside glass, weighted by intensity at the peak

  [[nodiscard]] double at(int azimuth, int elevation) const { return cd[grid.at(azimuth, elevation)]; }
  /// Between the grid's directions, linearly; 0 beyond it.
  [[nodiscard]] double at_deg(double azimuth_deg, double elevation_deg) const;
};

/// Told of each better state of the beam while it is worked out; may be called from the calling thread only.
using BeamWatcher = std::function<void(const BeamMap&)>;

/// The light that leaves by the prisms' own ways, far from the lens: a noise-free sum over the aperture, in
/// rounds of ever more spots until four independent sets agree within the wanted error. Spots of congruent
/// panels are worked out once. Intensities are those of the lens alone: glazing and service factors are left to
/// the caller. The same request gives the same answer to the last bit, whatever the number of processors.
///
/// Fails only when stopped through `progress`, which is told the share done by its own estimate.
Outcome<BeamMap> beam_map(const LightLens& lens, const LampBody& lamp, const BeamRequest& request,
                          const Progress& progress = {}, const BeamWatcher& watcher = {});

/// Flux of the light that leaves by the prisms' own ways in all directions, lm, and its standard error from
/// four independent sets.
struct BeamFlux {
  double lm = 0;
  double error_lm = 0;
};
BeamFlux beam_flux(const LightLens& lens, const LampBody& lamp, const BeamRequest& request, int spots);

}  // namespace prismwright
