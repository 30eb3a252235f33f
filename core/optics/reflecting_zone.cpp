#include "core/optics/reflecting_zone.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/optics/refraction.h"

namespace prismwright {

namespace {

constexpr int kCurvePoints = 33;
constexpr double kMostOfAFace = 0.8;  ///< lands may take no more than this share of a face

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

/// Where the line from `p` along `u` meets the line from `q` along `v`: distance from p.
double meeting_distance(SectionPoint p, SectionDirection u, SectionPoint q, SectionDirection v) {
  return cross(q - p, v) / cross(u, v);
}

}  // namespace

ReflectingPrism::ReflectingPrism(SectionPoint a, double chord_mm, double index, Faces faces)
    : corners_(angles_at(a, index)),
      index_(index),
      faces_(faces),
      out_(SectionDirection::at(corners_.beta).reversed()) {
  corners_.b = a + chord_mm * SectionDirection::at(corners_.beta);
  if (faces_ == Faces::true_curve) {
    corners_.c = true_point(0);
  } else {
    find_arc();
  }
}

ReflectingPrism ReflectingPrism::reaching(SectionPoint a, double elevation, double index, Faces faces) {
  const double beta = angles_at(a, index).beta;
  const double chord =
      meeting_distance(a, SectionDirection::at(beta), SectionPoint{}, SectionDirection::at(elevation));
  return {a, chord, index, faces};
}

SectionPoint ReflectingPrism::entry_point(double share) const { return between(corners_.a, corners_.b, share); }

SectionDirection ReflectingPrism::ray_inside(double share) const {
  const SectionPoint p = entry_point(share);
  const SectionDirection ray = SectionDirection::along(p - SectionPoint{});
  // From air into glass there is always a refracted ray.
  return refract(ray, SectionDirection::at(corners_.beta).quarter_turn(), 1, index_).value();
}

SectionPoint ReflectingPrism::true_point(double share) const {
  const SectionPoint p = entry_point(share);
  const SectionDirection d = ray_inside(share);
  const SectionOffset from_focus = p - SectionPoint{};
  const SectionOffset b = corners_.b - SectionPoint{};
  const double constant = b.length() - index_ * dot(b, out_);
  const double t =
      (constant - from_focus.length() + index_ * dot(from_focus, out_)) / (index_ * (1 - dot(d, out_)));
  return p + t * d;
}

SectionDirection ReflectingPrism::reflecting_tangent(double share) const {
  // Halves the angle between the ray in and the ray out; points from C towards B.
  return SectionDirection::along(1.0 * ray_inside(share) + 1.0 * out_).reversed();
}

void ReflectingPrism::find_arc() {
  const SectionDirection exit_way = SectionDirection::at(corners_.gamma);
  // Outward normals (right of the walk C to B) at the two ends.
  const SectionDirection at_b = reflecting_tangent(1).quarter_turn().reversed();
  const SectionDirection at_c = reflecting_tangent(0).quarter_turn().reversed();
  const SectionOffset turn = 1.0 * at_b + (-1.0) * at_c;
  radius_mm_ = cross(corners_.b - corners_.a, exit_way) / cross(turn, exit_way);
  centre_ = corners_.b - radius_mm_ * at_b;
  corners_.c = centre_ + radius_mm_ * at_c;
}

double ReflectingPrism::margin(double share) const {
  const SectionDirection normal = reflecting_tangent(share).quarter_turn();
  return incidence(ray_inside(share), normal) - critical_angle(index_);
}

double ReflectingPrism::true_share_at(double cut_mm, bool at_b) const {
  const SectionPoint corner = at_b ? corners_.b : corners_.c;
  double from_corner = std::min(0.5, cut_mm / reflecting_chord_mm());
  // Distance from the corner is all but proportional to the share: scaling settles in a few turns.
  for (int i = 0; i < 30; ++i) {
    const double ratio = cut_mm / distance(true_point(at_b ? 1 - from_corner : from_corner), corner);
    from_corner = std::min(1.0, from_corner * ratio);
    if (std::abs(ratio - 1) < 1e-14) break;
  }
  return at_b ? 1 - from_corner : from_corner;
}

SectionPoint ReflectingPrism::point_on_reflecting(double cut_mm, bool at_b) const {
  if (cut_mm <= 0) return at_b ? corners_.b : corners_.c;
  if (faces_ == Faces::true_curve) return true_point(true_share_at(cut_mm, at_b));
  const SectionOffset spoke = (at_b ? corners_.b : corners_.c) - centre_;
  const double angle = 2 * std::asin(cut_mm / (2 * radius_mm_)) * (at_b ? -1 : 1);
  const double c = std::cos(angle);
  const double s = std::sin(angle);
  return centre_ + SectionOffset{c * spoke.r - s * spoke.z, s * spoke.r + c * spoke.z};
}

double ReflectingPrism::land_cut(double land_mm, bool at_b) const {
  if (land_mm <= 0) return 0;
  const SectionPoint corner = at_b ? corners_.b : corners_.c;
  const SectionDirection along_flat = SectionDirection::along(corners_.a - corner);
  const SectionPoint far = at_b ? corners_.c : corners_.b;
  const SectionOffset chord = far - corner;
  const double half = 0.5 * std::acos(std::clamp(dot(chord, along_flat) / chord.length(), -1.0, 1.0));
  double cut = land_mm / (2 * std::sin(half));
  // The reflecting face is a little bent: correct until the flat has its width.
  for (int i = 0; i < 3 && cut < chord.length(); ++i) {
    cut *= land_mm / distance(corner + cut * along_flat, point_on_reflecting(cut, at_b));
  }
  return cut;
}

ReflectingPrism::Reach ReflectingPrism::reach(double land_mm) const {
  const ReflectingCorners& k = corners_;
  if (land_mm <= 0) return {elevation_of(k.a), elevation_of(k.b)};
  const double cut_a = land_mm / (2 * std::sin(0.5 * (k.beta - k.gamma)));
  const double cut_b = land_cut(land_mm, true);
  const double low = std::min(elevation_of(k.a + cut_a * SectionDirection::at(k.beta)),
                              elevation_of(k.a + cut_a * SectionDirection::at(k.gamma)));
  const double high = std::max(elevation_of(k.b - cut_b * SectionDirection::at(k.beta)),
                               elevation_of(point_on_reflecting(cut_b, true)));
  return {low, high};
}

Face ReflectingPrism::reflecting_face(double cut_c_mm, double cut_b_mm) const {
  if (faces_ == Faces::arc) {
    return arc_face(FaceRole::reflecting, point_on_reflecting(cut_c_mm, false),
                    point_on_reflecting(cut_b_mm, true), centre_, radius_mm_);
  }
  const double from = cut_c_mm > 0 ? true_share_at(cut_c_mm, false) : 0.0;
  const double to = cut_b_mm > 0 ? true_share_at(cut_b_mm, true) : 1.0;
  std::vector<SectionPoint> points;
  std::vector<SectionDirection> tangents;
  for (int i = 0; i < kCurvePoints; ++i) {
    const double share = from + (to - from) * i / (kCurvePoints - 1);
    points.push_back(true_point(share));
    tangents.push_back(reflecting_tangent(share));
  }
  if (cut_b_mm <= 0) points.back() = corners_.b;
  return true_face(FaceRole::reflecting, std::move(points), std::move(tangents));
}

Outcome<Profile> ReflectingPrism::profile(double land_mm) const {
  const ReflectingCorners& k = corners_;
  const double cut_a = land_mm > 0 ? land_mm / (2 * std::sin(0.5 * (k.beta - k.gamma))) : 0;
  const double cut_b = land_cut(land_mm, true);
  const double cut_c = land_cut(land_mm, false);
  struct Side {
    const char* name;
    double taken;
    double length;
  };
  for (const Side side :
       {Side{"entry", cut_a + cut_b, chord_mm()}, Side{"exit", cut_a + cut_c, distance(k.a, k.c)},
        Side{"reflecting", cut_b + cut_c, reflecting_chord_mm()}}) {
    if (side.taken <= kMostOfAFace * side.length) continue;
    return request_problem(
        "land.too_wide", "section.land_mm",
        fmt::format(
            "lands of {:g} mm would take {:.2f} mm of the {:.2f} mm of its {} face, more than {:.0f} %. Make "
            "section.land_mm smaller or section.reflecting_chord_mm longer",
            land_mm, side.taken, side.length, side.name, 100 * kMostOfAFace));
  }
  const SectionDirection entry_way = SectionDirection::at(k.beta);
  const SectionDirection exit_way = SectionDirection::at(k.gamma);
  const Face reflecting = reflecting_face(cut_c, cut_b);
  const SectionPoint exit_low = k.a + cut_a * exit_way;
  const SectionPoint exit_high = cut_c > 0 ? k.c - cut_c * exit_way : reflecting.start();
  const SectionPoint entry_high = cut_b > 0 ? k.b - cut_b * entry_way : k.b;
  const SectionPoint entry_low = k.a + cut_a * entry_way;
  Profile outline;
  outline.faces.push_back(straight_face(FaceRole::exit, exit_low, exit_high));
  if (land_mm > 0) outline.faces.push_back(straight_face(FaceRole::land, exit_high, reflecting.start()));
  outline.faces.push_back(reflecting);
  if (land_mm > 0) outline.faces.push_back(straight_face(FaceRole::land, reflecting.end(), entry_high));
  outline.faces.push_back(straight_face(FaceRole::entry, entry_high, entry_low));
  if (land_mm > 0) outline.faces.push_back(straight_face(FaceRole::land, entry_low, exit_low));
  return outline;
}

}  // namespace prismwright
