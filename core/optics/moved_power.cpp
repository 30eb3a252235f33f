#include "core/optics/moved_power.h"

#include <cmath>

#include "core/optics/refraction.h"

namespace prismwright {

namespace {

double elevation_of(SectionPoint p) { return std::atan2(p.z, p.r); }

/// The straight-sided prism from which the moved power takes its sides.
struct Base {
  ReflectingCorners corners;
  StraightEntry entry;
  SectionDirection out;  ///< along BA

  Base(SectionPoint a, double side_mm, double index) : corners(angles_at(a, index)) {
    corners.b = a + side_mm * SectionDirection::at(corners.beta);
    entry = {a, corners.b, index};
    out = SectionDirection::at(corners.beta).reversed();
  }
};

/// Where the line from `p` along `u` meets the line from `q` along `v`.
SectionPoint meeting(SectionPoint p, SectionDirection u, SectionPoint q, SectionDirection v) {
  return p + cross(q - p, v) / cross(u, v) * u;
}

/// The entry face from B to A as an arc on which both extreme rays run along `inside` within.
std::optional<FacePath> entry_arc(const EntryCurve& curve, double at_a, double at_b) {
  const SectionDirection normal_a = curve.outward(at_a);
  const SectionDirection normal_b = curve.outward(at_b);
  const SectionDirection ray = SectionDirection::at(at_a);
  const SectionOffset turn = 1.0 * normal_b + (-1.0) * normal_a;
  const double radius = cross(curve.b - SectionPoint{}, ray) / cross(turn, ray);
  if (!std::isfinite(radius) || radius <= 0) return std::nullopt;
  const SectionPoint centre = curve.b - radius * normal_b;
  return FacePath::arc(FaceRole::entry, curve.b, centre + radius * normal_a, centre);
}

/// Share of the exit curve at which it meets the line of the reflecting face: near 0, the ray at A.
std::optional<double> share_at_c(const ExitCurve& curve) {
  const auto off = [&](double share) { return cross(curve.at(share) - curve.entry.b, curve.tau); };
  double before = 0.02;
  double here = 0;
  double off_before = off(before);
  for (int i = 0; i < 40; ++i) {
    const double off_here = off(here);
    const double step = off_here * (here - before) / (off_here - off_before);
    if (!std::isfinite(step)) break;
    before = here;
    off_before = off_here;
    here -= step;
    if (std::abs(here) > 0.5) return std::nullopt;
    if (std::abs(step) < 1e-15) break;
  }
  return here;
}

/// The exit face from A as an arc on which both extreme rays leave level, to where it meets the reflecting
/// line.
std::optional<FacePath> exit_arc(const ExitCurve& curve, SectionPoint a) {
  const SectionDirection normal_a = curve.outward(1);  // the ray through B leaves at A
  const SectionDirection normal_c = curve.outward(0);
  const SectionDirection ray = curve.after(0);
  const SectionOffset turn = 1.0 * normal_a + (-1.0) * normal_c;
  const double radius = cross(a - curve.reflected_at(0), ray) / cross(turn, ray);
  if (!std::isfinite(radius) || radius <= 0) return std::nullopt;
  const SectionPoint centre = a - radius * normal_a;
  // Meeting of the circle with the reflecting line, the one nearer to where the extreme ray leaves.
  const SectionOffset to_centre = centre - curve.entry.b;
  const double along = dot(to_centre, curve.tau);
  const double aside = cross(to_centre, curve.tau);
  if (std::abs(aside) >= radius) return std::nullopt;
  const double half = std::sqrt(radius * radius - aside * aside);
  const SectionPoint leaving = centre + radius * normal_c;
  const SectionPoint one = curve.entry.b + (along - half) * curve.tau;
  const SectionPoint other = curve.entry.b + (along + half) * curve.tau;
  return FacePath::arc(FaceRole::exit, a, distance(one, leaving) < distance(other, leaving) ? one : other,
                       centre);
}

}  // namespace

double EntryCurve::constant() const {
  const SectionOffset from_focus = b - SectionPoint{};
  return from_focus.length() - index * dot(from_focus, inside);
}

SectionPoint EntryCurve::at(double elevation) const {
  const SectionDirection ray = SectionDirection::at(elevation);
  return SectionPoint{} + constant() / (1 - index * dot(ray, inside)) * ray;
}

SectionDirection EntryCurve::outward(double elevation) const {
  return SectionDirection::along(1.0 * SectionDirection::at(elevation) + (-index) * inside);
}

SectionPoint ExitCurve::reflected_at(double share) const {
  return meeting(entry.place(share), entry.inside(share), entry.b, tau);
}

SectionDirection ExitCurve::after(double share) const {
  const SectionDirection d = entry.inside(share);
  return SectionDirection::along(2 * dot(d, tau) * tau + (-1.0) * d);
}

SectionPoint ExitCurve::at(double share) const {
  const SectionPoint p = entry.place(share);
  const SectionPoint q = reflected_at(share);
  const SectionDirection d2 = after(share);
  const double t =
      (constant - (p - SectionPoint{}).length() - entry.index * distance(p, q) + q.r) / (entry.index - d2.r());
  return q + t * d2;
}

SectionDirection ExitCurve::outward(double share) const {
  return SectionDirection::along(entry.index * after(share) + (-1.0) * SectionDirection());
}

double ExitCurve::constant_for(double share, SectionPoint leaving) const {
  const SectionPoint p = entry.place(share);
  const SectionPoint q = reflected_at(share);
  return (p - SectionPoint{}).length() + entry.index * (distance(p, q) + distance(q, leaving)) - leaving.r;
}

std::optional<PrismShape> power_in_entry(SectionPoint a, double side_mm, const PrismKind& kind) {
  const Base base(a, side_mm, kind.index);
  const SectionDirection tau = mirror_tangent(base.entry.inside(0), base.out);  // walked from C to B
  const EntryCurve curve{base.corners.b,
                         SectionDirection::along(2 * dot(base.out, tau) * tau + (-1.0) * base.out), kind.index};
  const double at_a = elevation_of(a);
  const double at_b = elevation_of(base.corners.b);
  if (!(curve.constant() / (1 - kind.index * dot(SectionDirection::at(at_a), curve.inside)) > 0))
    return std::nullopt;
  PrismShape shape;
  shape.start_a = a;
  shape.corners = base.corners;
  if (kind.faces == Faces::true_curve) {
    const auto elevation = [at_a, at_b](double share) { return at_b + share * (at_a - at_b); };
    shape.entry = FacePath::curve(
        FaceRole::entry,
        [curve, elevation](double share) { return share == 0 ? curve.b : curve.at(elevation(share)); },
        [curve, elevation](double share) { return curve.outward(elevation(share)).quarter_turn(); });
  } else {
    auto arc = entry_arc(curve, at_a, at_b);
    if (!arc) return std::nullopt;
    shape.entry = std::move(*arc);
  }
  ReflectingCorners& k = shape.corners;
  k.a = shape.entry.place(1);
  k.c = meeting(k.b, tau, k.a, SectionDirection::at(k.gamma));
  k.beta = SectionDirection::along(k.b - k.a).elevation();
  shape.exit = FacePath::straight(FaceRole::exit, k.a, k.c);
  shape.reflecting = FacePath::straight(FaceRole::reflecting, k.c, k.b);
  return shape;
}

std::optional<PrismShape> power_in_exit(SectionPoint a, double side_mm, const PrismKind& kind) {
  const Base base(a, side_mm, kind.index);
  const SectionDirection tau = mirror_tangent(base.entry.inside(1), base.out);
  ExitCurve curve{base.entry, tau, 0};
  curve.constant = curve.constant_for(1, a);
  PrismShape shape;
  shape.start_a = a;
  shape.corners = base.corners;
  ReflectingCorners& k = shape.corners;
  if (kind.faces == Faces::true_curve) {
    const auto last = share_at_c(curve);
    if (!last) return std::nullopt;
    // Walked from A, where the ray through B leaves, to C.
    const auto on_entry = [end = *last](double share) { return 1 + share * (end - 1); };
    shape.exit = FacePath::curve(
        FaceRole::exit,
        [curve, on_entry, a](double share) { return share == 0 ? a : curve.at(on_entry(share)); },
        [curve, on_entry](double share) { return curve.outward(on_entry(share)).quarter_turn(); });
  } else {
    auto arc = exit_arc(curve, a);
    if (!arc) return std::nullopt;
    shape.exit = std::move(*arc);
  }
  k.c = shape.exit.place(1);
  k.gamma = SectionDirection::along(k.c - k.a).elevation();
  shape.reflecting = FacePath::straight(FaceRole::reflecting, k.c, k.b);
  shape.entry = FacePath::straight(FaceRole::entry, k.b, k.a);
  return shape;
}

}  // namespace prismwright
