#include "core/optics/light_sweep.h"

#include <algorithm>
#include <cmath>

namespace prismwright {

namespace {

constexpr double kJustInside = 1e-9;  ///< radians: end rays are traced this far inside a corner
constexpr int kBoundaryHalvings = 14;

/// One ray with its elevation.
struct Sample {
  double at = 0;
  TracedRay ray;
};

class Sweep {
 public:
  Sweep(const SectionPieces& section, const SectionView& view, SweepWitness& witness)
      : section_(section), view_(view), witness_(witness) {}

  /// The light between two corners.
  void between(double low, double high, int rays) {
    const double inside = std::min(kJustInside, 0.1 * (high - low));
    const double step = (high - low) / rays;
    Sample last = sample(low + inside);
    double from = low;
    witness_.see(last.ray, low, low);
    for (int i = 0; i < rays; ++i) {
      const Sample next = sample(low + (i + 0.5) * step);
      // The ray at the corner leaves its light to the first one within, unless they part ways.
      pass(last, next, from, i == 0 ? low : 0.5 * (last.at + next.at));
      last = next;
    }
    const Sample end = sample(high - inside);
    pass(last, end, from, high);
    witness_.see(end.ray, from, high);
  }

 private:
  [[nodiscard]] Sample sample(double at) const { return {at, section_.trace(view_, at)}; }

  /// Ends the light of `one` where the next ray takes over.
  void pass(const Sample& one, const Sample& next, double& from, double middle) {
    if (one.ray.goes_with(next.ray)) {
      witness_.see(one.ray, from, middle);
      from = middle;
      return;
    }
    Sample low = one;
    Sample high = next;
    for (int i = 0; i < kBoundaryHalvings; ++i) {
      Sample here = sample(0.5 * (low.at + high.at));
      (here.ray.goes_with(one.ray) ? low : high) = here;
    }
    const double edge = 0.5 * (low.at + high.at);
    witness_.see(one.ray, from, edge);
    witness_.see(low.ray, edge, edge);
    // Where a narrow run lies between the two, the ray beyond the edge is its only sign.
    witness_.see(high.ray, edge, edge);
    from = edge;
  }

  const SectionPieces& section_;
  const SectionView& view_;
  SweepWitness& witness_;
};

}  // namespace

int sweep_light(const SectionPieces& section, const SectionView& view, SeenSpan span, double rays_per_radian,
                SweepWitness& witness) {
  Sweep sweep(section, view, witness);
  int traced = 0;
  const auto add = [&](double low, double high) {
    const int rays = std::max(1, static_cast<int>(std::ceil(rays_per_radian * (high - low))));
    sweep.between(low, high, rays);
    traced += rays;
  };
  double low = span.low;
  for (const double corner : view.corners) {
    if (corner <= low || corner - low < 1e-10 || span.high - corner < 1e-10) continue;
    add(low, corner);
    low = corner;
  }
  if (span.high > low) add(low, span.high);
  return traced;
}

}  // namespace prismwright
