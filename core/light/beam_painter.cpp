#include "core/light/beam_painter.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"

namespace prismwright {

BeamPainter::Steps BeamPainter::columns(double start, double end) const {
  return {std::max(0, static_cast<int>(std::ceil(start))),
          std::min(grid_.azimuths - 1, static_cast<int>(std::floor(end)))};
}

BeamPainter::Steps BeamPainter::rows(const BeamPatch& patch) const {
  const double middle =
      (degrees(patch.middle().elevation) - grid_.elevation_from_deg) / grid_.elevation_step_deg;
  const double half = degrees(patch.half_width().elevation) / grid_.elevation_step_deg;
  return {std::max(0, static_cast<int>(std::ceil(middle - half))),
          std::min(grid_.elevations - 1, static_cast<int>(std::floor(middle + half)))};
}

void BeamPainter::paint(const BeamPatch& patch, const PaintPlace& place, double luminance, BeamSum& sum) const {
  const double azimuth_deg = degrees(patch.middle().azimuth + place.turn);
  const double half_deg = degrees(patch.half_width().azimuth);
  const double whole = 360 / grid_.azimuth_step_deg;
  // The grid may see the window once more a whole turn on.
  const double start = (azimuth_deg - half_deg - grid_.azimuth_from_deg) / grid_.azimuth_step_deg;
  const double end = (azimuth_deg + half_deg - grid_.azimuth_from_deg) / grid_.azimuth_step_deg;
  for (double turn = std::ceil(-end / whole); start + turn * whole <= grid_.azimuths - 1; ++turn) {
    const Steps steps = columns(start + turn * whole, end + turn * whole);
    for (int i = steps.from; i <= steps.to; ++i) column(patch, place, i, luminance, sum);
  }
}

void BeamPainter::column(const BeamPatch& patch, const PaintPlace& place, int i, double luminance,
                         BeamSum& sum) const {
  const Steps steps = rows(patch);
  const double azimuth = radians(grid_.azimuth_deg(i)) - place.turn;
  for (int k = steps.from; k <= steps.to; ++k) {
    const FarDirection far{azimuth, radians(grid_.elevation_deg(k))};
    const double cd = patch.intensity_cd(far);
    if (cd == 0) continue;
    const std::size_t at = grid_.at(i, k);
    const double seen = place.factor * cd;
    sum.cd[at] += seen;
    sum.glass[at] += seen * patch.glass_mm();
    sum.bound[at] += luminance * patch.spot().area_mm2 * patch.facing(far);
  }
}

void BeamPainter::paint_turned(const BeamPatch& patch, const std::vector<PaintPlace>& places, double luminance,
                               BeamSum& sum) const {
  const Steps steps = rows(patch);
  for (int k = steps.from; k <= steps.to; ++k) {
    // The place of the first sample differs from spot to spot and row to row, evenly.
    const double first = std::fmod(1e4 * std::abs(patch.spot().angle) + 0.618034 * k, 1.0);
    const TurnedMean mean(patch, radians(grid_.elevation_deg(k)), first);
    for (const PaintPlace& place : places) {
      const double start = degrees(mean.window().from + place.turn) - grid_.azimuth_from_deg;
      const double end = degrees(mean.window().to + place.turn) - grid_.azimuth_from_deg;
      for (double turn = 360 * std::ceil(-end / 360); start + turn <= width_deg(); turn += 360)
        row(patch, mean, place, k, turn, luminance, sum);
    }
  }
}

void BeamPainter::row(const BeamPatch& patch, const TurnedMean& mean, const PaintPlace& place, int k,
                      double turn_deg, double luminance, BeamSum& sum) const {
  const auto step_of = [&](double azimuth) {
    return (degrees(azimuth + place.turn) + turn_deg - grid_.azimuth_from_deg) / grid_.azimuth_step_deg;
  };
  const Steps steps = columns(step_of(mean.window().from), step_of(mean.window().to));
  for (int i = steps.from; i <= steps.to; ++i) {
    const double azimuth = radians(grid_.azimuth_deg(i) - turn_deg) - place.turn;
    const double seen = place.factor * mean.cd(azimuth);
    const std::size_t at = grid_.at(i, k);
    sum.cd[at] += seen;
    sum.glass[at] += seen * patch.glass_mm();
    sum.bound[at] += luminance * mean.lit_mm2(azimuth);
  }
}

}  // namespace prismwright
