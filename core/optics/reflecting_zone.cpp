#include "core/optics/reflecting_zone.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/optics/refraction.h"

namespace prismwright {

namespace {

constexpr double kMostOfAFace = 0.8;  ///< lands may take no more than this share of a face

double elevation_of(SectionPoint p) { return std::atan2(p.z, p.r); }

/// Length of AB for which B stands at the elevation, were the sides straight.
double straight_side(SectionPoint a, double elevation, double index) {
  const SectionDirection way = SectionDirection::at(angles_at(a, index).beta);
  const SectionDirection ray = SectionDirection::at(elevation);
  return cross(SectionPoint{} - a, ray) / cross(way, ray);
}

}  // namespace

std::optional<ReflectingPrism> ReflectingPrism::make(SectionPoint a, double side_mm, const PrismKind& kind,
                                                     const PrismLands& lands) {
  if (!(side_mm > 0)) return std::nullopt;
  auto shape = make_prism(a, side_mm, kind);
  if (!shape) return std::nullopt;
  return ReflectingPrism(std::move(*shape), side_mm, kind.index, lands);
}

std::optional<ReflectingPrism> ReflectingPrism::reaching(SectionPoint a, double elevation,
                                                         const PrismKind& kind, const PrismLands& lands) {
  double side = straight_side(a, elevation, kind.index);
  if (!turns_with_size(kind.power)) return make(a, side, kind, lands);
  // The direction of AB depends a little on its length: what is missing is made up in a few turns.
  for (int i = 0; i < 8; ++i) {
    auto prism = make(a, side, kind, lands);
    if (!prism) return std::nullopt;
    const double missing = elevation - elevation_of(prism->corners().b);
    if (std::abs(missing) < 1e-14) return prism;
    side *= 1 + missing / (elevation_of(prism->corners().b) - elevation_of(a));
  }
  return make(a, side, kind, lands);
}

double ReflectingPrism::margin(double share) const {
  const SectionPoint p = shape_.entry.place(1 - share);
  const SectionDirection ray = SectionDirection::along(p - SectionPoint{});
  const SectionDirection inside = refract(ray, shape_.entry.outward(1 - share), 1, index_).value();
  return incidence(inside, shape_.reflecting.outward(share)) - critical_angle(index_);
}

double ReflectingPrism::reach_low() const {
  const auto at_a = cut_corner(shape_.entry, shape_.exit, lands_.a);
  return at_a ? span_of(*at_a, shape_.entry).low : elevation_of(corners().a);
}

ElevationSpan ReflectingPrism::reach() const {
  const auto at_b = cut_corner(shape_.reflecting, shape_.entry, lands_.b);
  return {reach_low(), at_b ? span_of(*at_b, shape_.reflecting).high : elevation_of(corners().b)};
}

Problem ReflectingPrism::lands_eat(const char* side, double length_mm) const {
  return request_problem(
      "land.too_wide", "section.land_mm",
      fmt::format(
          "lands of up to {:g} mm would take more than {:.0f} % of its {} face of "
          "{:.2f} mm. Make the lands (section.land_mm, or the corner's own) smaller or the entry side longer",
          lands_.greatest_mm(), 100 * kMostOfAFace, side, length_mm));
}

Outcome<Profile> ReflectingPrism::profile() const {
  const auto at_a = cut_corner(shape_.entry, shape_.exit, lands_.a);
  const auto at_c = cut_corner(shape_.exit, shape_.reflecting, lands_.c);
  const auto at_b = cut_corner(shape_.reflecting, shape_.entry, lands_.b);
  struct Side {
    const char* name;
    const FacePath& path;
    const std::optional<CornerCut>& start;
    const std::optional<CornerCut>& end;
  };
  const Side sides[] = {{"exit", shape_.exit, at_a, at_c},
                        {"reflecting", shape_.reflecting, at_c, at_b},
                        {"entry", shape_.entry, at_b, at_a}};
  Profile outline;
  for (const Side& side : sides) {
    if (!side.start || !side.end || side.end->before - side.start->after < 1 - kMostOfAFace)
      return lands_eat(side.name, side.path.chord_mm());
    outline.faces.push_back(side.path.part(side.start->after, side.end->before));
    if (side.end->land) outline.faces.push_back(*side.end->land);
  }
  return outline;
}

PrismLands flat_lands(double width_mm) {
  const Land land{LandShape::flat, width_mm};
  return {land, land, land};
}

}  // namespace prismwright
