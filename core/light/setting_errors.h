#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/base/progress.h"
#include "core/light/trial_beams.h"

namespace prismwright {

/// What is asked about errors in setting a lens.
struct ErrorsAsk {
  int panel = 0;     ///< whose beam the trials are made with; 0: the first that holds prisms
  int spots = 6000;  ///< of that panel's aperture, about
};

/// What one prism's errors do to its beam: SettingMove by SettingMove, for one degree, mm or whole unit of
/// index. Means over its own spots by their flux; of belt work the part that shines along the panel's axis.
struct PrismSensitivity {
  std::string mark;
  std::string zone;
  int panel = 1;
  double flux_lm = 0;  ///< 0: sends no light the way it was made for, and the turns mean nothing
  BeamTurns mean;
  MoveSizes spread_deg{};  ///< root mean square turn of its spots
};

/// Some number over all trials.
struct TrialSpread {
  double mean = 0;
  double deviation = 0;  ///< standard deviation
  double p5 = 0;         ///< 5 % of the trials lie below; p50, p95 alike
  double p50 = 0;
  double p95 = 0;
};

/// Standard deviations by ErrorKind that leave 90 % on average, one kind alone: of the panel's peak, or of what
/// the zone adds in the direction of the peak. Blank: beyond bound_of, or the zone adds nothing there.
struct ToleranceRow {
  std::string zone;       ///< blank: the whole panel
  double peak_share = 0;  ///< of the panel's peak that the zone adds
  std::array<std::optional<double>, kErrorKinds.size()> deviation;
};

/// What one kind of error of one zone takes from the panel's peak, at the settings' standard deviation.
struct LossRow {
  std::string zone;
  ErrorKind kind = ErrorKind::tilt;
  double loss_percent = 0;  ///< of the intensity in the direction of the peak without errors, on average
};

/// What errors in setting and making do to a lens.
struct SettingErrors {
  std::vector<PrismSensitivity> prisms;  ///< of the whole lens; congruent panels share one tracing
  int panel = 1;                         ///< of the trials, and of the prisms in all that follows
  int trials = 0;
  int seed = 0;
  KindSizes deviations{};  ///< of the settings
  BeamPeak planned;        ///< without errors, screen, glazing and service factor
  double map_error = 0;    ///< of maps read between their directions near the peak, as a share of the peak
  TrialSpread peak_share;  ///< peak as a share of the peak without errors
  TrialSpread elevation_deg;
  TrialSpread height_deg;
  std::vector<ToleranceRow> tolerances;  ///< the whole panel first, then zone by zone from the top
  std::vector<LossRow> losses;           ///< greatest first
};

/// Works it all out at the design wavelength. Each prism draws its own normal errors (the three tilts, three
/// shifts, each face's angle, index), the lamp's place is common; a panel's beam is the sum of the beams of its
/// prisms' sectors, each turned as a whole by what re-tracing says for a small error. So far larger errors than
/// a setter would leave (past bound_of) are not told rightly. The same seed gives the same numbers to the last
/// bit on every number of threads.
///
/// Refuses a lamp without size and a panel without light; fails too when stopped through `progress`.
Outcome<SettingErrors> setting_errors(const LensPlan& plan, const ErrorsAsk& ask = {},
                                      const Progress& progress = {});

}  // namespace prismwright
