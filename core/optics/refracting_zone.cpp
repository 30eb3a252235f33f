#include "core/optics/refracting_zone.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/optics/refraction.h"

namespace prismwright {

namespace {

constexpr int kCurvePoints = 33;

/// The outer surface that belongs to one constant of equal optical path.
class OuterCurve {
 public:
  OuterCurve(const RefractingBand& band, double constant) : band_(band), constant_(constant) {}

  /// The curve whose glass is `edge_mm` thick along r where the ray of elevation `at` leaves.
  static OuterCurve through_edge(const RefractingBand& band, double at) {
    const double inside = elevation_inside(at, band.index);
    const OuterCurve plain(band, 0);
    return {band, (band.index - plain.along_beam(inside)) * band.edge_mm / std::cos(inside) +
                      band.focal_mm / std::cos(at) - plain.inner_advance(at)};
  }

  [[nodiscard]] double path(double t) const {
    return (constant_ - band_.focal_mm / std::cos(t) + inner_advance(t)) /
           (band_.index - along_beam(elevation_inside(t, band_.index)));
  }
  [[nodiscard]] SectionPoint inner(double t) const { return {band_.focal_mm, band_.focal_mm * std::tan(t)}; }
  [[nodiscard]] SectionPoint place(double t) const {
    return inner(t) + path(t) * SectionDirection::at(elevation_inside(t, band_.index));
  }
  /// Outward normal where an exit along the beam is wanted: along n u(a) - w.
  [[nodiscard]] SectionDirection normal(double t) const {
    const SectionDirection inside = SectionDirection::at(elevation_inside(t, band_.index));
    return SectionDirection::along(band_.index * inside + (-1.0) * beam());
  }

  /// Elevation whose ray leaves the outer face at height z (rising in t; bisection within the bracket).
  [[nodiscard]] double elevation_at_height(double z, double low, double high) const {
    for (int i = 0; i < 80; ++i) {
      const double middle = 0.5 * (low + high);
      (place(middle).z < z ? low : high) = middle;
    }
    return 0.5 * (low + high);
  }

  [[nodiscard]] Face true_outer(double from, double to) const {
    std::vector<SectionPoint> points;
    std::vector<SectionDirection> tangents;
    for (int i = 0; i < kCurvePoints; ++i) {
      const double t = from + (to - from) * i / (kCurvePoints - 1);
      points.push_back(place(t));
      tangents.push_back(normal(t).quarter_turn());
    }
    return true_face(FaceRole::outer, std::move(points), std::move(tangents));
  }

  /// Arc through the upper point on which both extreme rays leave along the beam: P0 + s0 u0 - R N0 = Q1 - R
  /// N1.
  [[nodiscard]] std::optional<Face> arc_outer(double from, double to) const {
    const SectionDirection ray = SectionDirection::at(elevation_inside(from, band_.index));
    const SectionDirection low = normal(from);
    const SectionDirection high = normal(to);
    const SectionOffset normals = 1.0 * low + (-1.0) * high;
    const SectionPoint upper = place(to);
    const double radius = cross(upper - inner(from), ray) / -cross(normals, ray);
    if (!(radius > 0) || !std::isfinite(radius)) return std::nullopt;
    const SectionPoint centre = upper - radius * high;
    return arc_face(FaceRole::outer, centre + radius * low, upper, centre, radius);
  }

  [[nodiscard]] Outcome<Face> outer(double from, double to) const {
    if (band_.faces == Faces::true_curve) return true_outer(from, to);
    if (auto arc = arc_outer(from, to)) return *arc;
    return request_problem("ring.arc", "",
                           fmt::format("no circle sends both the ray at {:.3f} deg and the ray at "
                                       "{:.3f} deg out level; choose true curves or other limits",
                                       degrees(from), degrees(to)));
  }

 private:
  [[nodiscard]] SectionDirection beam() const { return SectionDirection::at(-band_.aim); }
  /// Cosine between a ray inside and the beam.
  [[nodiscard]] double along_beam(double inside) const { return std::cos(inside + band_.aim); }
  /// How far the place where the ray enters lies along the beam, less the focal distance (0 for a level beam).
  [[nodiscard]] double inner_advance(double t) const {
    if (band_.aim == 0) return 0;
    return band_.focal_mm * (std::cos(band_.aim) - 1 - std::tan(t) * std::sin(band_.aim));
  }

  RefractingBand band_;
  double constant_;
};

/// What is left of a ring whose joints are level: its outer face spans the heights of its inner corners.
struct LevelLimits {
  OuterCurve curve;
  double from;
  double to;
};

LevelLimits level_limits(const RefractingBand& band, double from, double to) {
  const double top = band.focal_mm * std::tan(to);
  // The ray that leaves at the thin edge: f tan t + e tan a = f tan(to).
  const double last = band.elevation_of_margin(top);
  const OuterCurve curve = OuterCurve::through_edge(band, last);
  const double bottom = band.focal_mm * std::tan(from);
  const double first = from > 0 ? curve.elevation_at_height(bottom, -from, last) : from;
  return {curve, first, last};
}

/// Lets an arc that ends a little off the height of a level joint go on, or stop, where the joint is.
void end_at_height(Face& outer, double height_mm, bool upper) {
  if (outer.kind != FaceKind::arc) return;
  const double up = height_mm - outer.centre.z;
  const double squared = outer.radius_mm * outer.radius_mm - up * up;
  if (squared <= 0) return;
  (upper ? outer.points.back() : outer.points.front()) = {outer.centre.r + std::sqrt(squared), height_mm};
}

}  // namespace

double RefractingBand::margin_of_elevation(double t) const {
  return focal_mm * std::tan(t) + edge_mm * std::tan(elevation_inside(t, index));
}

double RefractingBand::elevation_of_margin(double margin_mm) const {
  double low = -std::atan(std::abs(margin_mm) / focal_mm);
  double high = std::atan(std::abs(margin_mm) / focal_mm);
  for (int i = 0; i < 200 && high - low > 1e-16; ++i) {
    const double middle = 0.5 * (low + high);
    if (middle == low || middle == high) break;
    (margin_of_elevation(middle) < margin_mm ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

double RefractingBand::thickness(double from, double to) const {
  const double inside = elevation_inside(from, index);
  return OuterCurve::through_edge(*this, to).path(from) * std::cos(inside);
}

double RefractingBand::elevation_of_thickness(double from, double thickness_mm) const {
  if (aim != 0) return elevation_by_halving(from, thickness_mm);
  // The path constant that gives this thickness at `from`; then the edge elevation with the same constant.
  const double cos_from = std::cos(elevation_inside(from, index));
  const double wanted = (index / cos_from - 1) * thickness_mm + focal_mm / std::cos(from);
  const double steepest = radians(85);
  double t = std::min(from + 0.1, steepest);
  // K(t) = (n / cos a - 1) e + f / cos t rises and is convex: Newton's steps settle from above.
  for (int i = 0; i < 60; ++i) {
    const double cos_t = std::cos(t);
    const double sin_t = std::sin(t);
    const double sin_a = sin_t / index;
    const double cos_a = std::sqrt(1 - sin_a * sin_a);
    const double constant = (index / cos_a - 1) * edge_mm + focal_mm / cos_t;
    const double slope = edge_mm * sin_a * cos_t / (cos_a * cos_a * cos_a) + focal_mm * sin_t / (cos_t * cos_t);
    const double step = (constant - wanted) / slope;
    t = std::clamp(t - step, 0.5 * t, steepest);
    if (std::abs(step) < 1e-14) break;
  }
  return t;
}

double RefractingBand::elevation_by_halving(double from, double thickness_mm) const {
  double low = from;
  double high = std::min(from + 0.6, radians(85));
  for (int i = 0; i < 50; ++i) {
    const double middle = 0.5 * (low + high);
    (thickness(from, middle) < thickness_mm ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

Outcome<Profile> RefractingBand::ring(double from, double to) const {
  const bool along_ray = joint == Joint::along_ray;
  const LevelLimits limits =
      along_ray ? LevelLimits{OuterCurve::through_edge(*this, to), from, to} : level_limits(*this, from, to);
  auto outer = limits.curve.outer(limits.from, limits.to);
  if (!outer) return outer.problem();
  const SectionPoint low = limits.curve.inner(from);
  if (!along_ray) end_at_height(*outer, low.z, false);
  const SectionPoint high = limits.curve.inner(to);
  return Profile{{straight_face(FaceRole::joint_lower, low, outer->start()), *outer,
                  straight_face(FaceRole::joint_upper, outer->end(), high),
                  straight_face(FaceRole::inner, high, low)}};
}

Outcome<Profile> RefractingBand::centre(double to) const {
  const double last = joint == Joint::along_ray ? to : level_limits(*this, 0, to).to;
  OuterCurve curve = OuterCurve::through_edge(*this, last);
  // An aimed beam makes one of the two edges the thinner one: that one gets the edge thickness.
  if (aim != 0 && curve.place(-last).r < focal_mm + edge_mm) curve = OuterCurve::through_edge(*this, -last);
  const SectionPoint high = curve.inner(to);
  const SectionPoint low = mirrored(high);
  // The ends of an aimed centre with level joints are not each other's mirror images.
  const bool uneven = aim != 0 && joint == Joint::level;
  const double first = uneven ? curve.elevation_at_height(low.z, -to - 0.02, 0) : -last;
  const double end = uneven ? curve.elevation_at_height(high.z, 0, to + 0.02) : last;
  Face outer;
  if (faces == Faces::true_curve) {
    outer = curve.true_outer(first, end);
  } else {
    auto arc = curve.arc_outer(aim == 0 ? 0 : first, end);
    if (!arc) return request_problem("ring.arc", "", "no circle serves the centre; choose true curves");
    outer = aim == 0 ? arc_face(FaceRole::outer, mirrored(arc->end()), arc->end(), {arc->centre.r, 0},
                                arc->radius_mm)
                     : *arc;
    if (uneven) {
      end_at_height(outer, low.z, false);
      end_at_height(outer, high.z, true);
    }
  }
  return Profile{{straight_face(FaceRole::joint_lower, low, outer.start()), outer,
                  straight_face(FaceRole::joint_upper, outer.end(), high),
                  straight_face(FaceRole::inner, high, low)}};
}

}  // namespace prismwright
