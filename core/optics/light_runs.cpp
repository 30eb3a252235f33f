#include "core/optics/light_runs.h"

#include <algorithm>

namespace prismwright {

namespace {

constexpr double kWide = 1e-12;  ///< radians

}  // namespace

void LightRuns::see(const TracedRay& ray, double from, double to) {
  const double z = ray.beam_z_mm;
  if (runs_.empty() || !runs_.back().ray.goes_with(ray) || runs_.back().to != from ||
      runs_.back().band != band_) {
    runs_.push_back({band_, ray, from, to, z, z});
    return;
  }
  LightRun& run = runs_.back();
  run.to = to;
  run.beam_from_mm = std::min(run.beam_from_mm, z);
  run.beam_to_mm = std::max(run.beam_to_mm, z);
}

std::vector<LightRun> LightRuns::wide_runs() const {
  std::vector<LightRun> wide;
  for (const LightRun& run : runs_) {
    if (run.to - run.from < kWide) continue;
    if (wide.empty() || !wide.back().ray.goes_with(run.ray) || wide.back().band != run.band ||
        run.from - wide.back().to > kWide) {
      wide.push_back(run);
      continue;
    }
    LightRun& last = wide.back();
    last.to = run.to;
    last.beam_from_mm = std::min(last.beam_from_mm, run.beam_from_mm);
    last.beam_to_mm = std::max(last.beam_to_mm, run.beam_to_mm);
  }
  return wide;
}

}  // namespace prismwright
