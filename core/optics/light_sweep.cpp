#include "core/optics/light_sweep.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace prismwright {

namespace {

constexpr double kJustInside = 1e-9;  ///< radians: end rays are traced this far inside a corner
constexpr int kBoundaryHalvings = 14;
constexpr int kMostRuns = 4;  ///< that are looked for between two rays

/// One ray with its elevation.
struct Sample {
  double at = 0;
  TracedRay ray;
};

/// Elevation at which the parabola through three departures turns round, if that is between the outer two.
std::optional<double> turning_elevation(const Sample& a, const Sample& b, const Sample& c) {
  const double ab = b.at - a.at;
  const double bc = c.at - b.at;
  const double first = (b.ray.departure_deg - a.ray.departure_deg) / ab;
  const double second = (c.ray.departure_deg - b.ray.departure_deg) / bc;
  const double bend = (second - first) / (ab + bc);
  if (first * second >= 0 || bend == 0) return std::nullopt;
  return 0.5 * (a.at + b.at) - first / (2 * bend);
}

class Sweep {
 public:
  Sweep(const SectionPieces& section, const SectionView& view, SweepWitness& witness)
      : section_(section), view_(view), witness_(witness) {}

  /// The light between two corners.
  void between(double low, double high, int rays) {
    const double inside = std::min(kJustInside, 0.1 * (high - low));
    const double step = (high - low) / rays;
    samples_.clear();
    samples_.push_back(sample(low + inside));
    for (int i = 0; i < rays; ++i) add(sample(low + (i + 0.5) * step));
    add(sample(high - inside));
    double from = low;
    witness_.see(samples_.front().ray, low, low);
    for (std::size_t i = 0; i + 1 < samples_.size(); ++i) {
      // The rays at the corners leave their light to the ones within, unless they part ways.
      const double middle = i == 0                     ? low
                            : i + 2 == samples_.size() ? high
                                                       : 0.5 * (samples_[i].at + samples_[i + 1].at);
      pass(samples_[i], samples_[i + 1], from, middle, kMostRuns);
    }
    witness_.see(samples_.back().ray, from, high);
  }

 private:
  [[nodiscard]] Sample sample(double at) const { return {at, section_.trace(view_, at)}; }

  /// Adds a sample, and one more where between the last three the departure turns round beyond the tolerance
  /// (or within it) unseen.
  void add(const Sample& next) {
    const std::size_t count = samples_.size();
    if (count >= 2) {
      const Sample& a = samples_[count - 2];
      const Sample& b = samples_[count - 1];
      if (b.ray.regular && a.ray.goes_with(b.ray) && b.ray.goes_with(next.ray)) {
        if (const auto turn = turning_elevation(a, b, next)) {
          const Sample there = sample(*turn);
          if (!there.ray.goes_with(b.ray)) {
            samples_.insert(samples_.end() - (*turn < b.at ? 1 : 0), there);
          }
        }
      }
    }
    samples_.push_back(next);
  }

  /// Ends the light of `one` where the next ray takes over; narrow runs between the two get theirs.
  void pass(const Sample& one, const Sample& next, double& from, double middle, int most) {
    if (one.ray.goes_with(next.ray)) {
      witness_.see(one.ray, from, std::max(from, middle));
      from = std::max(from, middle);
      return;
    }
    Sample low = one;
    Sample high = next;
    for (int i = 0; i < kBoundaryHalvings; ++i) {
      const Sample here = sample(0.5 * (low.at + high.at));
      (here.ray.goes_with(one.ray) ? low : high) = here;
    }
    const double edge = std::max(from, 0.5 * (low.at + high.at));
    witness_.see(one.ray, from, edge);
    witness_.see(low.ray, edge, edge);
    witness_.see(high.ray, edge, edge);
    from = edge;
    if (most > 0 && !high.ray.goes_with(next.ray)) pass(high, next, from, next.at, most - 1);
  }

  const SectionPieces& section_;
  const SectionView& view_;
  SweepWitness& witness_;
  std::vector<Sample> samples_;
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
