#include "core/optics/lamp_line.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/optics/light_sweep.h"

namespace prismwright {

namespace {

/// A place of Gauss's rule.
struct GaussPoint {
  double place = 0;
  double weight = 0;
};

/// Gauss's rule on -1..1: roots of Legendre's polynomial by Newton's steps from the usual cosine guess.
std::vector<GaussPoint> gauss_points(int count) {
  std::vector<GaussPoint> points;
  for (int i = 0; i < count; ++i) {
    double x = std::cos(kPi * (i + 0.75) / (count + 0.5));
    double slope = 1;
    for (int turn = 0; turn < 50; ++turn) {
      double before = 1;
      double here = x;
      for (int k = 2; k <= count; ++k) {
        const double next = ((2 * k - 1) * x * here - (k - 1) * before) / k;
        before = here;
        here = next;
      }
      slope = count * (x * here - before) / (x * x - 1);
      const double step = here / slope;
      x -= step;
      if (std::abs(step) < 1e-15) break;
    }
    points.push_back({x, 2 / ((1 - x * x) * slope * slope)});
  }
  return points;
}

/// Integral of cos^2 t: what a thin upright Lambertian line sends below elevation t, but for a constant.
double sent_below(double t) { return 0.5 * (t + std::sin(t) * std::cos(t)); }

/// The heights that part the lamp, rising, both ends included.
std::vector<double> lamp_parts(const SectionInput& input, const LampLine& lamp) {
  const double foot = lamp.above_mm - 0.5 * lamp.height_mm;
  const double head = lamp.above_mm + 0.5 * lamp.height_mm;
  // A place so far from the focal point sends light through the middle at the level tolerance.
  const double still_level =
      input.focal_mm * std::tan(radians(std::min(input.settings.level_within_deg, 45.0)));
  std::vector<double> parts = {foot, head};
  for (const Band band : {Band::lower, Band::refracting, Band::upper}) {
    const double focus = band_aim(input, band).focus_z_mm;
    for (const double away : {0.0, 0.5, 1.0, 1.5, 2.0, 3.0, 4.5, 8.0, 16.0}) {
      for (const double z : {focus - away * still_level, focus + away * still_level})
        if (z > foot && z < head) parts.push_back(z);
    }
  }
  std::sort(parts.begin(), parts.end());
  const auto same = [&](double a, double b) { return b - a < 1e-6 * lamp.height_mm; };
  parts.erase(std::unique(parts.begin(), parts.end(), same), parts.end());
  parts.back() = head;
  return parts;
}

/// Places on the lamp with their shares of its height.
std::vector<GaussPoint> lamp_places(const SectionInput& input, const LampLine& lamp, int points) {
  if (lamp.height_mm <= 0) return {{lamp.above_mm, 1}};
  const auto rule = gauss_points(points);
  const auto parts = lamp_parts(input, lamp);
  std::vector<GaussPoint> places;
  for (std::size_t i = 0; i + 1 < parts.size(); ++i) {
    const double half = 0.5 * (parts[i + 1] - parts[i]);
    for (const GaussPoint& point : rule)
      places.push_back({parts[i] + half * (1 + point.place), point.weight * half / lamp.height_mm});
  }
  return places;
}

class LampSums : public SweepWitness {
 public:
  explicit LampSums(LampLineProof& proof) : proof_(proof) {}

  void start(double weight, SeenSpan span) {
    weight_ = weight;
    all_ += weight * (sent_below(span.high) - sent_below(span.low));
  }

  void see(const TracedRay& ray, double from, double to) override {
    if (to <= from) return;
    const double flux = weight_ * (sent_below(to) - sent_below(from));
    const double gone = flux * ray.lost_at_reflection;
    const double kept = flux - gone;
    const Fate after = ray.fate == Fate::lost_reflecting ? Fate::stray : ray.fate;
    proof_.share[static_cast<int>(after)] += kept;
    proof_.share[static_cast<int>(Fate::lost_reflecting)] += gone;
    if (ray.regular && (after == Fate::level || after == Fate::stray)) spread(ray, kept);
  }

  void close() {
    for (double& share : proof_.share) share /= all_;
    proof_.share_of_lamp = all_ / (kPi / 2);
    if (own_way_ <= 0) return;
    proof_.own_way = own_way_ / all_;
    proof_.within = within_ / own_way_;
    proof_.rms_departure_deg = std::sqrt(squares_ / own_way_);
  }

  double within_deg = 0.5;

 private:
  void spread(const TracedRay& ray, double flux) {
    const double off = ray.departure_deg;
    proof_.lowest_departure_deg = own_way_ > 0 ? std::min(proof_.lowest_departure_deg, off) : off;
    proof_.highest_departure_deg = own_way_ > 0 ? std::max(proof_.highest_departure_deg, off) : off;
    own_way_ += flux;
    squares_ += flux * off * off;
    if (std::abs(off) <= within_deg) within_ += flux;
  }

  LampLineProof& proof_;
  double weight_ = 1;
  double all_ = 0;
  double own_way_ = 0;
  double within_ = 0;
  double squares_ = 0;
};

}  // namespace

LampLineProof prove_lamp(const Section& section, const LampLine& lamp, int points, int elevations) {
  const SectionPieces pieces(section);
  LampLineProof proof;
  proof.lamp = lamp;
  LampSums sums(proof);
  sums.within_deg = section.input.settings.level_within_deg;
  for (const GaussPoint& point : lamp_places(section.input, lamp, points)) {
    const SectionView view = pieces.seen_from(point.place);
    SeenSpan span = view.band;
    for (const SeenSpan& piece : view.pieces)
      span = {std::min(span.low, piece.low), std::max(span.high, piece.high)};
    sums.start(point.weight, span);
    sweep_light(pieces, view, span, elevations / (span.high - span.low), sums);
  }
  sums.close();
  return proof;
}

}  // namespace prismwright
