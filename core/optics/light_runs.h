#pragma once

#include <vector>

#include "core/optics/light_sweep.h"

namespace prismwright {

/// Neighbouring rays that fare alike.
struct LightRun {
  Band band = Band::refracting;  ///< of the sweep
  TracedRay ray;                 ///< one of them
  double from = 0;               ///< elevations, radians
  double to = 0;
  double beam_from_mm = 0;  ///< heights between which they leave; meaningful for level light
  double beam_to_mm = 0;
};

/// Joins the rays of sweeps to runs.
class LightRuns : public SweepWitness {
 public:
  /// The rays that follow are of this band's sweep.
  void start(Band band) { band_ = band; }
  void see(const TracedRay& ray, double from, double to) override;

  /// The runs that hold light, rising within each sweep.
  [[nodiscard]] std::vector<LightRun> wide_runs() const;

 private:
  Band band_ = Band::refracting;
  std::vector<LightRun> runs_;
};

}  // namespace prismwright
