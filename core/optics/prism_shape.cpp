#include "core/optics/prism_shape.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/optics/historic_pair.h"
#include "core/optics/moved_power.h"
#include "core/optics/refraction.h"

namespace prismwright {

namespace {

double elevation_of(SectionPoint p) { return std::atan2(p.z, p.r); }

/// Refraction angle ga of the focal ray at A: 2 asin(n sin ga) - ga = 90 deg - e; rising in ga, one root.
double refraction_at_a(double elevation, double index) {
  const double wanted = kPi / 2 - elevation;
  const auto missing = [&](double ga) {
    return 2 * std::asin(std::min(1.0, index * std::sin(ga))) - ga - wanted;
  };
  double low = 0;
  double high = std::asin(1 / index);
  for (int i = 0; i < 12; ++i) {
    const double middle = 0.5 * (low + high);
    (missing(middle) < 0 ? low : high) = middle;
  }
  double ga = 0.5 * (low + high);
  for (int i = 0; i < 8; ++i) {
    const double sin_xi = index * std::sin(ga);
    const double slope = 2 * index * std::cos(ga) / std::sqrt(1 - sin_xi * sin_xi) - 1;
    const double step = missing(ga) / slope;
    ga = std::clamp(ga - step, low, high);
    if (std::abs(step) < 1e-16) break;
  }
  return ga;
}

/// The reflecting face by equal optical path, walked from C (share 0) to B.
FacePath true_reflecting(const StraightEntry& entry, SectionDirection out) {
  const SectionOffset b = entry.b - SectionPoint{};
  const double constant = b.length() - entry.index * dot(b, out);
  const auto place = [entry, out, constant](double share) {
    if (share == 1) return entry.b;
    const SectionPoint p = entry.place(share);
    const SectionDirection d = entry.inside(share);
    const SectionOffset from_focus = p - SectionPoint{};
    const double t = (constant - from_focus.length() + entry.index * dot(from_focus, out)) /
                     (entry.index * (1 - dot(d, out)));
    return p + t * d;
  };
  const auto tangent = [entry, out](double share) { return mirror_tangent(entry.inside(share), out); };
  return FacePath::curve(FaceRole::reflecting, place, tangent);
}

/// The historic arc, walked from C to B; C lies on the exit way.
std::optional<FacePath> arc_reflecting(const StraightEntry& entry, SectionDirection out,
                                       SectionDirection exit_way) {
  // Outward normals (right of the walk C to B) at the two ends.
  const SectionDirection at_b = mirror_tangent(entry.inside(1), out).quarter_turn().reversed();
  const SectionDirection at_c = mirror_tangent(entry.inside(0), out).quarter_turn().reversed();
  const SectionOffset turn = 1.0 * at_b + (-1.0) * at_c;
  const double radius = cross(entry.b - entry.a, exit_way) / cross(turn, exit_way);
  if (!std::isfinite(radius) || radius <= 0) return std::nullopt;
  const SectionPoint centre = entry.b - radius * at_b;
  return FacePath::arc(FaceRole::reflecting, centre + radius * at_c, entry.b, centre);
}

std::optional<PrismShape> straight_sided(SectionPoint a, double side_mm, const PrismKind& kind) {
  PrismShape shape;
  shape.start_a = a;
  shape.corners = angles_at(a, kind.index);
  ReflectingCorners& k = shape.corners;
  k.b = a + side_mm * SectionDirection::at(k.beta);
  const StraightEntry entry{a, k.b, kind.index};
  const SectionDirection out = SectionDirection::at(k.beta).reversed();
  if (kind.faces == Faces::true_curve) {
    shape.reflecting = true_reflecting(entry, out);
  } else {
    auto arc = arc_reflecting(entry, out, SectionDirection::at(k.gamma));
    if (!arc) return std::nullopt;
    shape.reflecting = std::move(*arc);
  }
  k.c = shape.reflecting.place(0);
  shape.exit = FacePath::straight(FaceRole::exit, a, k.c);
  shape.entry = FacePath::straight(FaceRole::entry, k.b, a);
  return shape;
}

}  // namespace

ReflectingCorners angles_at(SectionPoint a, double index) {
  ReflectingCorners corners;
  corners.a = a;
  const double elevation = elevation_of(a);
  const double ga = refraction_at_a(elevation, index);
  const double xi = std::asin(index * std::sin(ga));
  corners.beta = kPi / 2 + elevation + xi;
  corners.gamma = elevation + xi - ga;
  return corners;
}

SectionDirection StraightEntry::inside(double share) const {
  const SectionDirection ray = SectionDirection::along(place(share) - SectionPoint{});
  // From air into glass there is always a refracted ray.
  return refract(ray, SectionDirection::along(b - a).quarter_turn(), 1, index).value();
}

SectionDirection mirror_tangent(SectionDirection in, SectionDirection out) {
  return SectionDirection::along(1.0 * in + 1.0 * out).reversed();
}

double circle_inside_mm(const ReflectingCorners& k) {
  const double around = distance(k.a, k.b) + distance(k.b, k.c) + distance(k.c, k.a);
  return 2 * std::abs(cross(k.b - k.a, k.c - k.a)) / around;
}

std::optional<PrismShape> make_prism(SectionPoint a, double side_mm, const PrismKind& kind) {
  switch (kind.power) {
    case Power::reflecting:
      return straight_sided(a, side_mm, kind);
    case Power::entry:
      return power_in_entry(a, side_mm, kind);
    case Power::exit:
      return power_in_exit(a, side_mm, kind);
    case Power::hollow_entry:
    case Power::hollow_exit:
      return historic_pair(a, side_mm, kind);
  }
  return std::nullopt;
}

}  // namespace prismwright
