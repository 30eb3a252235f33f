#include "core/lens/dipping_volume.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/base/angle.h"

namespace prismwright {
namespace {

constexpr double kShare = 1e-9;  ///< of the full moment: error at which no piece is halved further
constexpr int kMostHalvings = 16;
constexpr double kFaceChord_mm = 0.02;  ///< for the places where a curved face first meets a plane

using Polygon = std::vector<SectionPoint>;

/// What of a polygon has a r + b z >= c.
void clip(const Polygon& polygon, double a, double b, double c, Polygon& kept) {
  kept.clear();
  const std::size_t n = polygon.size();
  for (std::size_t i = 0; i < n; ++i) {
    const SectionPoint p = polygon[i];
    const SectionPoint q = polygon[i + 1 == n ? 0 : i + 1];
    const double at_p = a * p.r + b * p.z - c;
    const double at_q = a * q.r + b * q.z - c;
    if (at_p >= 0) kept.push_back(p);
    if ((at_p >= 0) != (at_q >= 0)) kept.push_back(between(p, q, at_p / (at_p - at_q)));
  }
}

/// Integral of z dr dz over a polygon walked anticlockwise.
double moment(const Polygon& polygon) {
  double sum = 0;
  const std::size_t n = polygon.size();
  for (std::size_t i = 0; i < n; ++i) {
    const SectionPoint p = polygon[i];
    const SectionPoint q = polygon[i + 1 == n ? 0 : i + 1];
    sum += (p.r - q.r) * (p.z * p.z + p.z * q.z + q.z * q.z);
  }
  return sum / 6;
}

/// The moments of one side of the level plane, over the angle from it.
class OneSide {
 public:
  OneSide(const TrimmedRing& ring, const Polygon& section, bool below)
      : ring_(ring), section_(section), up_(below ? -1 : 1), full_(moment(section)) {
    gap_mm_ = ring.trim().half == Half::whole ? 0 : ring.trim().half_gap_mm;
  }

  double volume() {
    std::vector<double> stops = meetings();
    double sum = 0;
    for (std::size_t i = 0; i + 1 < stops.size(); ++i) sum += along(stops[i], stops[i + 1], 0);
    return sum;
  }

 private:
  double kept_moment(double angle) {
    left_ = section_;
    const double sine = std::sin(angle);
    for (const TrimmedRing::Side& plane : ring_.sides()) {
      clip(left_, plane.x, plane.y * std::cos(angle) + up_ * plane.z * sine, ring_.trim().set_back_mm, next_);
      std::swap(left_, next_);
    }
    clip(left_, 0, sine, gap_mm_, next_);
    return moment(next_);
  }

  /// Angles at which a face of the section first and last meets one of the planes, and both ends. Between them
  /// nothing comes or goes unseen by the rule: a rounded corner may meet a plane well before its ends do.
  [[nodiscard]] std::vector<double> meetings() const {
    std::vector<double> stops = {0, kPi / 2, kPi};
    for (const Face& face : ring_.profile().faces) {
      const auto points = points_along(face, kFaceChord_mm);
      for (const TrimmedRing::Side& plane : ring_.sides()) add_waves(points, plane, stops);
      std::vector<double> levels;
      for (const SectionPoint p : points) {
        if (gap_mm_ < p.z) levels.push_back(std::asin(gap_mm_ / p.z));
      }
      add_ends(levels, stops);
      for (double& level : levels) level = kPi - level;
      add_ends(levels, stops);
    }
    std::sort(stops.begin(), stops.end());
    return stops;
  }

  void add_waves(const std::vector<SectionPoint>& points, const TrimmedRing::Side& plane,
                 std::vector<double>& stops) const {
    const double middle = std::atan2(up_ * plane.z, plane.y);
    std::vector<double> before;
    std::vector<double> after;
    for (const SectionPoint p : points) {
      const double wave = std::hypot(plane.y, plane.z) * p.z;
      const double level = ring_.trim().set_back_mm - plane.x * p.r;
      if (!(std::abs(level) < wave)) continue;
      before.push_back(middle - std::acos(level / wave));
      after.push_back(middle + std::acos(level / wave));
    }
    add_ends(before, stops);
    add_ends(after, stops);
  }

  static void add_ends(const std::vector<double>& angles, std::vector<double>& stops) {
    if (angles.empty()) return;
    const auto [least, most] = std::minmax_element(angles.begin(), angles.end());
    for (const double angle : {*least, *most}) {
      for (const double turned : {angle - 2 * kPi, angle, angle + 2 * kPi}) {
        if (turned > 0 && turned < kPi) stops.push_back(turned);
      }
    }
  }

  /// Seven points of Gauss held against the fifteen of Kronrod that hold them.
  double along(double from, double to, int halvings) {
    constexpr double kPlace[8] = {0.991455371120812639206854697526329, 0.949107912342758524526189684047851,
                                  0.864864423359769072789712788640926, 0.741531185599394439863864773280788,
                                  0.586087235467691130294144838258730, 0.405845151377397166906606412076961,
                                  0.207784955007898467600689403773245, 0};
    constexpr double kKronrod[8] = {0.022935322010529224963732008058970, 0.063092092629978553290700663189204,
                                    0.104790010322250183839876322541518, 0.140653259715525918745189590510238,
                                    0.169004726639267902826583426598550, 0.190350578064785409913256402421014,
                                    0.204432940075298892414161999234649, 0.209482141084727828012999174891714};
    constexpr double kGauss[4] = {0.129484966168869693270611432679082, 0.279705391489276667901467771423780,
                                  0.381830050505118944950369775488975, 0.417959183673469387755102040816327};
    const double middle = (from + to) / 2;
    const double half = (to - from) / 2;
    double fine = 0;
    double coarse = 0;
    for (int i = 0; i < 8; ++i) {
      double value = kept_moment(middle - half * kPlace[i]);
      if (i < 7) value += kept_moment(middle + half * kPlace[i]);
      fine += kKronrod[i] * value;
      if (i % 2 == 1) coarse += kGauss[i / 2] * value;
    }
    if (halvings >= kMostHalvings || std::abs(fine - coarse) * half <= kShare * full_ * (to - from)) {
      return fine * half;
    }
    return along(from, middle, halvings + 1) + along(middle, to, halvings + 1);
  }

  const TrimmedRing& ring_;
  const Polygon& section_;
  double up_;
  double full_;
  double gap_mm_ = 0;
  Polygon left_;
  Polygon next_;
};

}  // namespace

double dipping_volume_mm3(const TrimmedRing& ring, double chord_mm) {
  const Polygon section = polygon_of(ring.profile(), chord_mm);
  const Half half = ring.trim().half;
  double volume = 0;
  if (half != Half::lower) volume += OneSide(ring, section, false).volume();
  if (half != Half::upper) volume += OneSide(ring, section, true).volume();
  return volume;
}

}  // namespace prismwright
