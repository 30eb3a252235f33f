#pragma once

#include <string>
#include <vector>

#include "core/lens/brief.h"
#include "core/light/effective_intensity.h"
#include "core/light/light_settings.h"

namespace prismwright {

/// The light of one panel at one elevation, by azimuth from its own axis; azimuths rise evenly.
struct PanelCurve {
  double axis_deg = 0;  ///< of the panel in the lens frame
  Screen screen = Screen::none;
  double from_deg = 0;
  double step_deg = 0;
  std::vector<double> cd;  ///< screen and other factors included

  [[nodiscard]] double at(double azimuth_deg) const;  ///< from its own axis; 0 beyond the curve
};

/// Shares of a flash's peak at which its length is taken: half of it, and where the eye has all but lost it.
inline constexpr double kHalfPeak = 0.5;
inline constexpr double kFoot = 0.05;

/// One flash as a far observer sees it. Times in s from the start of the rhythm.
struct Flash {
  double peak_s = 0;
  double peak_cd = 0;
  double start_s = 0;  ///< at 5 % of the peak
  double end_s = 0;
  double half_start_s = 0;  ///< at 50 %
  double half_end_s = 0;
  Screen screen = Screen::none;  ///< of the panel that gives most light at the peak
  int panel = 0;                 ///< its number
  EffectiveIntensities effective;

  [[nodiscard]] double length_s() const { return half_end_s - half_start_s; }
  [[nodiscard]] double foot_length_s() const { return end_s - start_s; }
};

/// What a far observer at one elevation sees of the lens, over one period.
struct Rhythm {
  double turn_s = 0;    ///< of the whole lens; 0: it stands still
  double period_s = 0;  ///< smallest time after which everything repeats; 0 for a steady light
  bool steady = false;  ///< never dark: the light does not fall under half of its peak
  double peak_cd = 0;
  double least_cd = 0;
  FlashCurve light;            ///< over one turn, from the moment panel 1's axis points at the observer
  std::vector<Flash> flashes;  ///< of one period, by time of their peaks
};

/// How much peaks and spaces of a rhythm may differ and still count as repeating (common practice: what an
/// observer with a watch cannot tell).
inline constexpr double kAlikePeaks = 0.25;
inline constexpr double kAlikeTimes_s = 0.1;

/// Works out the rhythm of a lens that turns once in turn_s (0: it stands still, seen along the axis of panel
/// 1). Light between two peaks that stays over 5 % of the greater joins them into one flash. `a_s`: the
/// constant of the effective intensity.
Rhythm rhythm_of(const std::vector<PanelCurve>& panels, double turn_s, TurnWay way, double a_s = kEyeSums_s);

/// Time of one turn that gives a wanted period, s: the present turn scaled. Blank (0) for a steady light.
double turn_for_period_s(const Rhythm& rhythm, double period_s);

/// Length of a flash by geometry, s: the time in which the lens turns through the whole divergence asin(d / f)
/// (Encyclopaedia Britannica 1911, Table VII).
double flash_by_geometry_s(double lamp_width_mm, double focal_mm, double turn_s);

}  // namespace prismwright
