#include "core/lens/trimmed_volume.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/lens/dipping_volume.h"
#include "core/lens/trimmed_ring.h"

namespace prismwright {

namespace {

constexpr double kChord_mm = 1e-6;
constexpr double kLongest_mm = 0.25;

/// Integral of acos(clamp(u, -c, c)) du from 0.
double clamped_acos_integral(double u, double c) {
  const double inside = std::clamp(u, -c, c);
  const double angle = std::acos(inside);
  return inside * angle - std::sqrt(1 - inside * inside) + 1 + angle * (u - inside);
}

/// Integral over r, from nearest_room or 0 up to p.r, of (distance from the line) x (kept angle).
class AlongR {
 public:
  explicit AlongR(const TrimmedRing& ring) : ring_(ring) {}

  [[nodiscard]] double operator()(SectionPoint p) const {
    return ring_.turning() == TurningAxis::lens ? about_lens(p) : about_panel(p);
  }

 private:
  /// Of r (w - 2 asin(s / r)): r^2 w / 2 - r^2 asin(s / r) - s sqrt(r^2 - s^2).
  [[nodiscard]] double about_lens(SectionPoint p) const {
    const Trim& trim = ring_.trim();
    if (const auto ends = ring_.facet_ends()) {
      const double start = std::max({*trim.flat_inner_mm, ring_.nearest_room_mm(),
                                     hidden_mm(ends->clockwise_mm), hidden_mm(ends->anticlockwise_mm)});
      if (p.r <= start) return 0;
      return behind_facet(start, p.r, -radians(trim.clockwise_side_deg), ends->clockwise_mm) +
             behind_facet(start, p.r, radians(trim.anticlockwise_side_deg), ends->anticlockwise_mm);
    }
    const double w = radians(trim.anticlockwise_side_deg - trim.clockwise_side_deg);
    const double s = trim.set_back_mm;
    const auto sum = [&](double r) {
      return r * r * (w / 2 - std::asin(s / r)) - s * std::sqrt(r * r - s * s);
    };
    const double start = std::max(ring_.nearest_room_mm(), 1e-9);
    return p.r > start ? sum(p.r) - sum(start) : 0;
  }

  /// Up to where from the lens axis a side that lies beyond the panel's axis hides the flat face's middle.
  [[nodiscard]] double hidden_mm(double end_mm) const {
    return end_mm < 0 ? std::hypot(*ring_.trim().flat_inner_mm, end_mm) : 0;
  }

  /// One side of the panel's axis behind a flat face at f: of r min(acos(f / r), B - asin(s / r)). The first is
  /// the less up to the corner of face and side plane: r^2 acos(f / r) / 2 - f sqrt(r^2 - f^2) / 2; beyond it
  /// r^2 (B - asin(s / r)) / 2 - s sqrt(r^2 - s^2) / 2.
  [[nodiscard]] double behind_facet(double from, double to, double side, double end_mm) const {
    const double f = *ring_.trim().flat_inner_mm;
    const double s = ring_.trim().set_back_mm;
    const auto by_facet = [&](double r) {
      return (r * r * std::acos(std::min(1.0, f / r)) - f * std::sqrt(std::max(0.0, r * r - f * f))) / 2;
    };
    const auto by_side = [&](double r) {
      return (r * r * (side - std::asin(s / r)) - s * std::sqrt(r * r - s * s)) / 2;
    };
    const double corner = std::clamp(end_mm > 0 ? std::hypot(f, end_mm) : from, from, to);
    double sum = 0;
    if (corner > from) sum += by_facet(corner) - by_facet(from);
    if (to > corner) sum += by_side(to) - by_side(corner);
    return sum;
  }

  [[nodiscard]] double about_panel(SectionPoint p) const {
    const Trim& trim = ring_.trim();
    const double gap = trim.half == Half::whole ? 0 : trim.half_gap_mm;
    if (p.z <= gap || p.z <= 0) return 0;
    const double start = std::max(ring_.nearest_room_mm(), 0.0);
    if (p.r <= start) return 0;
    const double c = std::sqrt(1 - gap * gap / (p.z * p.z));
    const double turn = angle_integral(p, start, c);
    return p.z * turn * (trim.half == Half::whole ? 2 : 1);
  }

  /// Integral over r of the kept angle on one side of the level plane.
  [[nodiscard]] double angle_integral(SectionPoint p, double start, double c) const {
    double to = std::acos(-c) * (p.r - start);
    double from = std::acos(c) * (p.r - start);
    bool low_given = false;
    bool high_given = false;
    for (const TrimmedRing::Limit& limit : ring_.limits()) {
      const double turned = acos_integral(limit, p, start, c);
      // Beyond the place where the planes meet, one of two like limits is the stricter all the way.
      if (limit.at_least) {
        to = low_given ? std::min(to, turned) : turned;
        low_given = true;
      } else {
        from = high_given ? std::max(from, turned) : turned;
        high_given = true;
      }
    }
    return to - from;
  }

  static double acos_integral(const TrimmedRing::Limit& limit, SectionPoint p, double start, double c) {
    const double u1 = (limit.slope * p.r + limit.start_mm) / p.z;
    if (std::abs(limit.slope) < 1e-9) return std::acos(std::clamp(u1, -c, c)) * (p.r - start);
    const double u0 = (limit.slope * start + limit.start_mm) / p.z;
    return p.z / limit.slope * (clamped_acos_integral(u1, c) - clamped_acos_integral(u0, c));
  }

  const TrimmedRing& ring_;
};

/// Integral of f dz along a straight piece, Gauss's rule with four points.
double along_piece(const AlongR& f, SectionPoint from, SectionPoint to) {
  constexpr double kPlace[2] = {0.3399810435848563, 0.8611363115940526};
  constexpr double kWeight[2] = {0.6521451548625461, 0.3478548451374538};
  double sum = 0;
  for (int i = 0; i < 2; ++i) {
    sum += kWeight[i] * f(between(from, to, (1 - kPlace[i]) / 2));
    sum += kWeight[i] * f(between(from, to, (1 + kPlace[i]) / 2));
  }
  return sum * (to.z - from.z) / 2;
}

}  // namespace

namespace {

double half_volume_mm3(PlannedPrism prism, Half half, double gap_mm) {
  prism.trim.half = half;
  prism.trim.half_gap_mm = gap_mm;
  return trimmed_volume_mm3(prism);
}

/// A half that reaches past the level plane: both halves, less what of the other lies farther off.
double reaching_volume_mm3(const PlannedPrism& prism) {
  const Half own = prism.trim.half;
  const Half other = own == Half::upper ? Half::lower : Half::upper;
  return half_volume_mm3(prism, own, 0) + half_volume_mm3(prism, other, 0) -
         half_volume_mm3(prism, other, -prism.trim.half_gap_mm);
}

}  // namespace

double trimmed_volume_mm3(const PlannedPrism& prism) {
  const bool half = prism.turning == TurningAxis::panel && prism.trim.half != Half::whole;
  if (half && prism.trim.half_gap_mm < 0) return reaching_volume_mm3(prism);
  const TrimmedRing ring(prism);
  if (ring.dip() != 0) return dipping_volume_mm3(ring, kChord_mm);
  const AlongR along_r(ring);
  const auto outline = polygon_of(ring.profile(), kChord_mm);
  double volume = 0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const SectionPoint from = outline[i];
    const SectionPoint to = outline[(i + 1) % outline.size()];
    const int pieces = std::max(1, static_cast<int>(std::ceil(distance(from, to) / kLongest_mm)));
    for (int k = 0; k < pieces; ++k) {
      volume += along_piece(along_r, between(from, to, static_cast<double>(k) / pieces),
                            between(from, to, static_cast<double>(k + 1) / pieces));
    }
  }
  return volume;
}

}  // namespace prismwright
