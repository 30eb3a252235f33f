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

  Base(SectionPoint a, double side_mm, double index) : Base(angles_at(a, index), side_mm, index) {}

  Base(const ReflectingCorners& angles, double side_mm, double index) : corners(angles) {
    const SectionPoint a = corners.a;
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

namespace {

/// A trial of the direction of the entry side.
struct ExitTrial {
  Base base;
  ExitCurve curve;
  SectionPoint
      leaving;  ///< where the ray at A leaves; with the right direction, where it is reflected: corner C
  double radius_mm = 0;  ///< arcs
  double miss_mm = 0;    ///< of that ray from where it is reflected to where it leaves

  ExitTrial(SectionPoint a, double beta, double side_mm, const PrismKind& kind)
      : base(directed(a, beta, kind.index), side_mm, kind.index),
        curve{base.entry, mirror_tangent(base.entry.inside(1), base.out), 0} {
    const SectionPoint reflected = curve.reflected_at(0);
    if (kind.faces == Faces::true_curve) {
      curve.constant = curve.constant_for(1, a);
      leaving = curve.at(0);
    } else {
      // The arc on which both extreme rays leave level; the ray through B leaves at A.
      const SectionOffset turn = 1.0 * curve.outward(1) + (-1.0) * curve.outward(0);
      radius_mm = cross(a - reflected, curve.after(0)) / cross(turn, curve.after(0));
      leaving = a + (-radius_mm) * turn;
    }
    miss_mm = dot(leaving - reflected, curve.after(0));
  }

  static ReflectingCorners directed(SectionPoint a, double beta, double index) {
    ReflectingCorners angles = angles_at(a, index);
    angles.beta = beta;
    return angles;
  }
};

/// The direction at which the ray at A leaves where it is reflected, in the corner C; blank where there is
/// none.
std::optional<ExitTrial> settled_exit(SectionPoint a, double side_mm, const PrismKind& kind) {
  constexpr double kNoMiss_mm = 1e-11;
  double before = angles_at(a, kind.index).beta;
  double here = before + 1e-3;
  double miss_before = ExitTrial(a, before, side_mm, kind).miss_mm;
  for (int i = 0; i < 40; ++i) {
    ExitTrial trial(a, here, side_mm, kind);
    if (std::abs(trial.miss_mm) < kNoMiss_mm) return trial;
    const double step = trial.miss_mm * (here - before) / (trial.miss_mm - miss_before);
    if (!std::isfinite(step) || std::abs(step) > 0.2) return std::nullopt;
    before = here;
    miss_before = trial.miss_mm;
    here -= step;
    if (std::abs(step) < 1e-16) return std::abs(trial.miss_mm) < 1e-8 ? std::optional(trial) : std::nullopt;
  }
  return std::nullopt;
}

}  // namespace

std::optional<PrismShape> power_in_exit(SectionPoint a, double side_mm, const PrismKind& kind) {
  const auto settled = settled_exit(a, side_mm, kind);
  if (!settled) return std::nullopt;
  const ExitCurve& curve = settled->curve;
  PrismShape shape;
  shape.start_a = a;
  shape.corners = settled->base.corners;
  ReflectingCorners& k = shape.corners;
  if (kind.faces == Faces::true_curve) {
    // Walked from A, where the ray through B leaves, to C, where the one at A does.
    shape.exit = FacePath::curve(
        FaceRole::exit, [curve, a](double share) { return share == 0 ? a : curve.at(1 - share); },
        [curve](double share) { return curve.outward(1 - share).quarter_turn(); });
  } else {
    if (!(settled->radius_mm > 0)) return std::nullopt;
    shape.exit = FacePath::arc(FaceRole::exit, a, settled->leaving, a - settled->radius_mm * curve.outward(1));
  }
  k.c = shape.exit.place(1);
  k.gamma = SectionDirection::along(k.c - k.a).elevation();
  shape.reflecting = FacePath::straight(FaceRole::reflecting, k.c, k.b);
  shape.entry = FacePath::straight(FaceRole::entry, k.b, k.a);
  return shape;
}

}  // namespace prismwright
