#include "core/optics/stack_builder.h"

#include <cmath>

namespace prismwright {

namespace {

constexpr double kSettled = 1e-15;  ///< radians

double elevation_of(SectionPoint p) { return std::atan2(p.z, p.r); }

}  // namespace

SectionPoint StackBuilder::corner_above(const StackPlace& place, double side_mm) const {
  if (place.corner_a) return *place.corner_a;
  const auto on_ray = [&](double elevation) {
    return SectionPoint{place.height_mm / std::tan(elevation), place.height_mm} +
           task_.gap_mm * SectionDirection::at(place.limiting);
  };
  const bool sharp = task_.lands.a.size_mm <= 0;
  if (sharp) return on_ray(place.limiting);
  PrismKind kind = task_.kind;
  // The reflecting face is not in corner A: its arc is quicker to make than its true curve.
  if (kind.power == Power::reflecting) kind.faces = Faces::arc;
  // The land's low end follows the corner all but one to one: secant steps settle at once.
  double before = place.limiting;
  double off_before = 0;
  double elevation = place.limiting;
  for (int i = 0; i < 12; ++i) {
    const auto trial = ReflectingPrism::make(on_ray(elevation), side_mm, kind, task_.lands);
    if (!trial) break;
    const double off = trial->reach_low() - place.limiting;
    if (std::abs(off) < kSettled) break;
    const double slope = i > 0 && elevation != before ? (off - off_before) / (elevation - before) : 1;
    before = elevation;
    off_before = off;
    elevation -= off / (slope > 0.5 && slope < 2 ? slope : 1);
  }
  return on_ray(elevation);
}

std::optional<StackedPrism> StackBuilder::prism(SectionPoint a, double side_mm) const {
  auto made = ReflectingPrism::make(a, side_mm, task_.kind, task_.lands);
  if (!made) return std::nullopt;
  const ElevationSpan reach = made->reach();
  return StackedPrism{std::move(*made), reach, false};
}

std::optional<StackedPrism> StackBuilder::cut_short(SectionPoint a, double limit) const {
  double corner = limit;
  for (int i = 0; i < 20; ++i) {
    if (!(corner > elevation_of(a))) return std::nullopt;
    auto made = ReflectingPrism::reaching(a, corner, task_.kind, task_.lands);
    if (!made) return std::nullopt;
    const ElevationSpan reach = made->reach();
    const double missing = limit - reach.high;
    if (std::abs(missing) < 1e-13 || task_.lands.b.size_mm <= 0)
      return StackedPrism{std::move(*made), reach, false};
    corner += missing;
  }
  return std::nullopt;
}

std::optional<StackedPrism> StackBuilder::prism_to(const StackPlace& place, double limit) const {
  // Corner A with its land depends on the side only where the direction of the sides does: a few turns are
  // enough.
  double side = task_.side_mm;
  std::optional<StackedPrism> made;
  for (int i = 0; i < (turns_with_size(task_.kind.power) ? 3 : 1); ++i) {
    made = cut_short(corner_above(place, side), limit);
    if (!made) return std::nullopt;
    side = made->prism.side_mm();
  }
  return made;
}

std::optional<StackedPrism> StackBuilder::prism_of(const StackPlace& place, const Size& size) const {
  double side = size(corner_above(place, task_.side_mm));
  if (!(side > 0)) return std::nullopt;
  return prism(corner_above(place, side), side);
}

StackPlace StackBuilder::above(const StackedPrism& stacked) {
  const ReflectingCorners& k = stacked.prism.corners();
  return {stacked.reach.high, k.c.z, (k.b - SectionPoint{}).length(), std::nullopt};
}

double StackBuilder::measure(const ReflectingPrism& prism, Division division) {
  const ReflectingCorners& k = prism.corners();
  switch (division) {
    case Division::area:
      return 0.5 * std::abs(cross(k.b - k.a, k.c - k.a));
    case Division::height:
      return k.c.z - k.a.z;
    case Division::thickness:
      return circle_inside_mm(k);
    default:
      return prism.side_mm();
  }
}

double StackBuilder::side_for(SectionPoint a, Division division, double wanted) const {
  if (division == Division::side || division == Division::count || division == Division::by_hand) return wanted;
  double side = task_.side_mm;
  // All measures grow all but as the side, the area as its square.
  for (int i = 0; i < 40; ++i) {
    const auto made = ReflectingPrism::make(a, side, task_.kind, {});
    if (!made) return 0;
    const double now = measure(*made, division);
    if (!(now > 0)) return 0;
    const double ratio = division == Division::area ? std::sqrt(wanted / now) : wanted / now;
    side *= ratio;
    if (std::abs(ratio - 1) < 1e-13) break;
  }
  return side;
}

}  // namespace prismwright
