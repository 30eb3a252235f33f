#include "core/light/lamp_body.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"

namespace prismwright {

namespace {

bool is_flat(LampShape shape) { return shape == LampShape::disc || shape == LampShape::tile; }

/// Unit vectors across another one.
struct Across {
  SpaceVector level;
  SpaceVector up;
};
Across across(SpaceVector along) {
  const bool upright = std::abs(along.z) > 0.999999;
  const SpaceVector level = upright ? SpaceVector{0, 1, 0} : unit(cross({0, 0, 1}, along));
  return {level, cross(along, level)};
}

std::optional<double> meet_sphere(const LampPart& part, const SpaceRay& ray) {
  const SpaceVector to = part.middle - ray.from;
  const double b = dot(to, ray.along);
  const double r = part.width_mm / 2;
  const double rest = b * b - dot(to, to) + r * r;
  if (rest < 0) return std::nullopt;
  return b - std::sqrt(rest);
}

std::optional<double> meet_cylinder(const LampPart& part, const SpaceRay& ray) {
  const SpaceVector from = ray.from - part.middle;
  const double half = part.height_mm / 2;
  const double r = part.width_mm / 2;
  double low = -1e300;
  double high = 1e300;
  if (ray.along.z != 0) {
    const double a = (-half - from.z) / ray.along.z;
    const double b = (half - from.z) / ray.along.z;
    low = std::min(a, b);
    high = std::max(a, b);
  } else if (std::abs(from.z) > half) {
    return std::nullopt;
  }
  const double a = ray.along.x * ray.along.x + ray.along.y * ray.along.y;
  const double b = from.x * ray.along.x + from.y * ray.along.y;
  const double c = from.x * from.x + from.y * from.y - r * r;
  if (a > 0) {
    const double rest = b * b - a * c;
    if (rest < 0) return std::nullopt;
    const double root = std::sqrt(rest);
    low = std::max(low, (-b - root) / a);
    high = std::min(high, (-b + root) / a);
  } else if (c > 0) {
    return std::nullopt;
  }
  return low <= high ? std::optional(low) : std::nullopt;
}

std::optional<double> meet_flat(const LampPart& part, const SpaceRay& ray) {
  const double towards = dot(ray.along, part.facing);
  if (towards == 0) return std::nullopt;
  const double s = dot(part.middle - ray.from, part.facing) / towards;
  const SpaceVector off = place_on(ray, s) - part.middle;
  if (part.shape == LampShape::disc) return length(off) <= part.width_mm / 2 ? std::optional(s) : std::nullopt;
  const Across sides = across(part.facing);
  const bool inside = std::abs(dot(off, sides.level)) <= part.width_mm / 2 &&
                      std::abs(dot(off, sides.up)) <= part.height_mm / 2;
  return inside ? std::optional(s) : std::nullopt;
}

/// A direction by the cosine law about a normal, from two numbers.
SpaceVector cosine_direction(SpaceVector normal, double one, double other) {
  const Across sides = across(normal);
  const double sine = std::sqrt(one);
  const double turn = 2 * kPi * other;
  return unit(sine * std::cos(turn) * sides.level + sine * std::sin(turn) * sides.up +
              std::sqrt(std::max(0.0, 1 - one)) * normal);
}

SpaceRay ray_of(const LampPart& part, double a, double b, double c, double d) {
  const double r = part.width_mm / 2;
  SpaceVector off;
  SpaceVector normal = part.facing;
  if (part.shape == LampShape::sphere) {
    const double z = 1 - 2 * a;
    const double level = std::sqrt(std::max(0.0, 1 - z * z));
    normal = {level * std::cos(2 * kPi * b), level * std::sin(2 * kPi * b), z};
    off = r * normal;
  } else if (part.shape == LampShape::cylinder) {
    const double side = part.height_mm / (part.height_mm + r);  // of the surface, both ends together 2 pi r r
    const double turn = 2 * kPi * b;
    if (a < side) {
      normal = {std::cos(turn), std::sin(turn), 0};
      off = r * normal + SpaceVector{0, 0, part.height_mm * (a / side - 0.5)};
    } else {
      const double rest = (a - side) / (1 - side);
      const double up = rest < 0.5 ? -1 : 1;
      const double radius = r * std::sqrt(rest < 0.5 ? 2 * rest : 2 * rest - 1);
      normal = {0, 0, up};
      off = {radius * std::cos(turn), radius * std::sin(turn), up * part.height_mm / 2};
    }
  } else {
    const Across sides = across(part.facing);
    if (part.shape == LampShape::disc) {
      const double radius = r * std::sqrt(a);
      off = radius * std::cos(2 * kPi * b) * sides.level + radius * std::sin(2 * kPi * b) * sides.up;
    } else {
      off = part.width_mm * (a - 0.5) * sides.level + part.height_mm * (b - 0.5) * sides.up;
    }
  }
  return {part.middle + off, cosine_direction(normal, c, d)};
}

Problem no_size(const char* key, double value) {
  return request_problem(
      "lamp.size", key,
      fmt::format("{} is {:g} mm; a lamp without size gives a beam without width. Give the size of what shines",
                  key, value));
}

std::vector<LampPart> parts_of(const Lamp& lamp) {
  LampPart one;
  one.shape = lamp.shape;
  one.width_mm = lamp.width_mm;
  one.height_mm = lamp.height_mm;
  one.middle = {lamp.aside_x_mm, lamp.aside_y_mm, lamp.above_mm};
  one.facing = direction_at(radians(lamp.facing_deg), radians(lamp.facing_up_deg));
  if (lamp.set == LampSet::one) return {one};
  std::vector<LampPart> parts;
  for (int i = 0; i < lamp.count; ++i) {
    LampPart part = one;
    const double turn = radians(lamp.facing_deg) + 2 * kPi * i / lamp.count;
    const SpaceVector out{std::cos(turn), std::sin(turn), 0};
    if (lamp.set == LampSet::ring) {
      part.facing = direction_at(turn, radians(lamp.facing_up_deg));
      part.middle = one.middle + lamp.ring_mm * out;
    } else {
      // The one alight stands in the focus, on the rim of the disc.
      const SpaceVector first{std::cos(radians(lamp.facing_deg)), std::sin(radians(lamp.facing_deg)), 0};
      part.middle = one.middle + lamp.ring_mm * (out - first);
      part.alight = i == 0;
    }
    parts.push_back(part);
  }
  return parts;
}

}  // namespace

double LampPart::surface_mm2() const {
  const double r = width_mm / 2;
  switch (shape) {
    case LampShape::cylinder:
      return 2 * kPi * r * (height_mm + r);
    case LampShape::sphere:
      return 4 * kPi * r * r;
    case LampShape::disc:
      return kPi * r * r;
    case LampShape::tile:
      return width_mm * height_mm;
  }
  return 0;
}

double LampPart::radius_mm() const {
  switch (shape) {
    case LampShape::cylinder:
    case LampShape::tile:
      return std::hypot(width_mm, height_mm) / 2;
    case LampShape::sphere:
    case LampShape::disc:
      return width_mm / 2;
  }
  return 0;
}

std::optional<double> LampPart::meet(const SpaceRay& ray) const {
  switch (shape) {
    case LampShape::cylinder:
      return meet_cylinder(*this, ray);
    case LampShape::sphere:
      return meet_sphere(*this, ray);
    case LampShape::disc:
    case LampShape::tile:
      return meet_flat(*this, ray);
  }
  return std::nullopt;
}

bool LampPart::shines_towards(SpaceVector ray_along) const {
  return alight && (!is_flat(shape) || dot(ray_along, facing) < 0);
}

Outcome<LampBody> LampBody::make(const Lamp& lamp) {
  if (!(lamp.width_mm > 0)) return no_size("lamp.width_mm", lamp.width_mm);
  const bool high = lamp.shape == LampShape::cylinder || lamp.shape == LampShape::tile;
  if (high && !(lamp.height_mm > 0)) return no_size("lamp.height_mm", lamp.height_mm);
  LampBody body;
  body.parts_ = parts_of(lamp);
  const double surface = body.parts_.front().surface_mm2();
  const auto alight = static_cast<double>(
      std::count_if(body.parts_.begin(), body.parts_.end(), [](const LampPart& p) { return p.alight; }));
  const bool by_flux = lamp.known == LampKnown::flux;
  // Lambert's law: a surface of luminance L sends pi L from each unit of its area.
  body.luminance_ = by_flux ? lamp.flux_lm / (kPi * surface) : lamp.luminance_cd_mm2;
  body.flux_ = alight * kPi * surface * body.luminance_;
  SpaceVector sum;
  for (const LampPart& part : body.parts_)
    if (part.alight) sum = sum + (1 / alight) * (part.middle - SpacePoint{});
  body.middle_ = SpacePoint{} + sum;
  for (const LampPart& part : body.parts_)
    if (part.alight)
      body.radius_ = std::max(body.radius_, length(part.middle - body.middle_) + part.radius_mm());
  return body;
}

double LampBody::luminance_along(const SpaceRay& ray) const {
  const LampPart* first = nullptr;
  double nearest = 1e300;
  for (const LampPart& part : parts_) {
    const auto at = part.meet(ray);
    if (!at || *at >= nearest) continue;
    nearest = *at;
    first = &part;
  }
  return first && first->shines_towards(ray.along) ? luminance_ : 0;
}

std::optional<double> LampBody::meet(const SpaceRay& ray) const {
  std::optional<double> nearest;
  for (const LampPart& part : parts_) {
    const auto at = part.meet(ray);
    if (at && *at > 1e-6 && (!nearest || *at < *nearest)) nearest = at;
  }
  return nearest;
}

SpaceRay LampBody::ray(const std::array<double, 4>& numbers) const {
  std::vector<const LampPart*> alight;
  for (const LampPart& part : parts_)
    if (part.alight) alight.push_back(&part);
  const double scaled = numbers[0] * static_cast<double>(alight.size());
  const auto which = std::min(alight.size() - 1, static_cast<std::size_t>(scaled));
  return ray_of(*alight[which], scaled - static_cast<double>(which), numbers[1], numbers[2], numbers[3]);
}

}  // namespace prismwright
