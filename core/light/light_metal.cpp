#include "core/light/light_metal.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/angle.h"
#include "core/frame/plate_polygons.h"

namespace prismwright {

namespace {

constexpr double kOutlineWithin_mm = 0.02;

struct Span {
  double from;
  double to;
};

/// The part of a span in which start + s d lies between two limits.
Span within(Span span, double start, double d, double low, double high) {
  if (d == 0) return start >= low && start <= high ? span : Span{1, 0};
  const double a = (low - start) / d;
  const double b = (high - start) / d;
  return {std::max(span.from, std::min(a, b)), std::min(span.to, std::max(a, b))};
}

bool holds(const PlateOutline& outline, double u, double v) {
  bool inside = false;
  for (std::size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
    const PlatePoint a = outline[i];
    const PlatePoint b = outline[j];
    if ((a.v > v) != (b.v > v) && u < (b.u - a.u) * (v - a.v) / (b.v - a.v) + a.u) inside = !inside;
  }
  return inside;
}

}  // namespace

RibInLight::Outline RibInLight::outline_of(const PlateOutline& points) {
  Outline outline{thinned(points, kOutlineWithin_mm), {}};
  outline.extent = extent_of({outline.points});
  return outline;
}

RibInLight::RibInLight(const RibPlan& rib, double axis_deg)
    : outer_mm_(rib.set_back_mm), thickness_mm_(rib.thickness_mm), floor_mm_(rib.thickness_mm - rib.pocket_mm) {
  const double azimuth = radians(rib.azimuth_deg - axis_deg);
  const double inward = rib.side == Side::clockwise ? 1 : -1;
  frame_ = {{},
            {std::cos(azimuth), std::sin(azimuth), 0},
            {0, 0, 1},
            {-inward * std::sin(azimuth), inward * std::cos(azimuth), 0}};
  outline_ = outline_of(rib.outline);
  for (const Pocket& pocket : rib.pockets) pockets_.push_back(outline_of(pocket.outline));
}

bool RibInLight::in_metal(double u, double v, double depth) const {
  if (!holds(outline_.points, u, v)) return false;
  if (depth <= floor_mm_) return true;
  return std::none_of(pockets_.begin(), pockets_.end(), [&](const Outline& pocket) {
    const PlateExtent& box = pocket.extent;
    return u >= box.low.u && u <= box.high.u && v >= box.low.v && v <= box.high.v && holds(pocket.points, u, v);
  });
}

std::optional<double> RibInLight::meet(const SpaceRay& ray, double least_mm, double most_mm) const {
  const double depth = dot(ray.from - SpacePoint{}, frame_.third);
  const double sinks = dot(ray.along, frame_.third);
  if ((depth < outer_mm_ && sinks <= 0) || (depth > thickness_mm_ && sinks >= 0)) return std::nullopt;
  Span span = within({least_mm, most_mm}, depth, sinks, outer_mm_, thickness_mm_);
  if (span.from > span.to) return std::nullopt;
  const double u = dot(ray.from - SpacePoint{}, frame_.first);
  const double du = dot(ray.along, frame_.first);
  const double v = ray.from.z;
  const double dv = ray.along.z;
  const PlateExtent& box = outline_.extent;
  span = within(within(span, u, du, box.low.u, box.high.u), v, dv, box.low.v, box.high.v);
  if (span.from > span.to) return std::nullopt;
  // Between two of these places the ray runs in metal or in air all the way.
  std::vector<double> places{span.from, span.to};
  const auto cross_edges = [&](const PlateOutline& outline) {
    for (std::size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
      const double eu = outline[i].u - outline[j].u;
      const double ev = outline[i].v - outline[j].v;
      const double across = du * ev - dv * eu;
      if (across == 0) continue;
      const double to_u = outline[j].u - u;
      const double to_v = outline[j].v - v;
      const double on_edge = (to_u * dv - to_v * du) / across;
      if (on_edge < 0 || on_edge > 1) continue;
      const double s = (to_u * ev - to_v * eu) / across;
      if (s > span.from && s < span.to) places.push_back(s);
    }
  };
  cross_edges(outline_.points);
  for (const Outline& pocket : pockets_) {
    const PlateExtent& room = pocket.extent;
    const Span near = within(within(span, u, du, room.low.u, room.high.u), v, dv, room.low.v, room.high.v);
    if (near.from <= near.to) cross_edges(pocket.points);
  }
  if (sinks != 0) {
    const double floor = (floor_mm_ - depth) / sinks;
    if (floor > span.from && floor < span.to) places.push_back(floor);
  }
  std::sort(places.begin(), places.end());
  for (std::size_t i = 0; i + 1 < places.size(); ++i) {
    const double middle = 0.5 * (places[i] + places[i + 1]);
    if (in_metal(u + middle * du, v + middle * dv, depth + middle * sinks)) return places[i];
  }
  return std::nullopt;
}

std::optional<double> RingInLight::meet(const SpaceRay& ray, double least_mm, double most_mm) const {
  const Span slab =
      within({least_mm, most_mm}, ray.from.z, ray.along.z, ring_.z_low_mm, ring_.z_low_mm + ring_.thickness_mm);
  if (slab.from > slab.to) return std::nullopt;
  const double a = ray.along.x * ray.along.x + ray.along.y * ray.along.y;
  const double b = ray.from.x * ray.along.x + ray.from.y * ray.along.y;
  const double c = ray.from.x * ray.from.x + ray.from.y * ray.from.y;
  const auto inside = [&](double radius) {
    const double rest = b * b - a * (c - radius * radius);
    if (a == 0) return c <= radius * radius ? slab : Span{1, 0};
    if (rest < 0) return Span{1, 0};
    const double root = std::sqrt(rest);
    return Span{std::max(slab.from, (-b - root) / a), std::min(slab.to, (-b + root) / a)};
  };
  const Span disc = inside(ring_.outer_radius_mm);
  if (disc.from > disc.to) return std::nullopt;
  const Span hole = inside(ring_.inner_radius_mm);
  if (hole.from > hole.to || disc.from < hole.from) return disc.from;
  return hole.to < disc.to ? std::optional(hole.to) : std::nullopt;
}

}  // namespace prismwright
