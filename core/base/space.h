#pragma once

#include <cmath>

namespace prismwright {

/// A place in space, mm. In the lens frame: origin at the principal focus, x along the axis of panel 1, z up.
struct SpacePoint {
  double x = 0;
  double y = 0;
  double z = 0;
};

/// A displacement (mm) or a direction; a function that wants a unit vector says so.
struct SpaceVector {
  double x = 0;
  double y = 0;
  double z = 0;
};

inline SpaceVector operator-(SpacePoint a, SpacePoint b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
inline SpacePoint operator+(SpacePoint p, SpaceVector v) { return {p.x + v.x, p.y + v.y, p.z + v.z}; }
inline SpacePoint operator-(SpacePoint p, SpaceVector v) { return {p.x - v.x, p.y - v.y, p.z - v.z}; }
inline SpaceVector operator+(SpaceVector a, SpaceVector b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
inline SpaceVector operator-(SpaceVector a, SpaceVector b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
inline SpaceVector operator-(SpaceVector v) { return {-v.x, -v.y, -v.z}; }
inline SpaceVector operator*(double k, SpaceVector v) { return {k * v.x, k * v.y, k * v.z}; }
inline double dot(SpaceVector a, SpaceVector b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
inline SpaceVector cross(SpaceVector a, SpaceVector b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
inline double length(SpaceVector v) { return std::sqrt(dot(v, v)); }
/// The vector at length 1; it must not be zero.
inline SpaceVector unit(SpaceVector v) { return (1 / length(v)) * v; }
/// The unit vector at an azimuth (anticlockwise from x) and elevation, radians.
inline SpaceVector direction_at(double azimuth, double elevation) {
  return {std::cos(elevation) * std::cos(azimuth), std::cos(elevation) * std::sin(azimuth),
          std::sin(elevation)};
}

/// A ray of light; `along` is a unit vector.
struct SpaceRay {
  SpacePoint from;
  SpaceVector along{1, 0, 0};
};
inline SpacePoint place_on(const SpaceRay& ray, double along_mm) { return ray.from + along_mm * ray.along; }

/// A frame of three unit vectors at right angles, right-handed: local x is `first`, y `second`, z `third`.
struct SpaceFrame {
  SpacePoint origin;
  SpaceVector first{1, 0, 0};
  SpaceVector second{0, 1, 0};
  SpaceVector third{0, 0, 1};

  [[nodiscard]] SpaceVector into(SpaceVector v) const { return {dot(v, first), dot(v, second), dot(v, third)}; }
  [[nodiscard]] SpacePoint into(SpacePoint p) const {
    const SpaceVector v = into(p - origin);
    return {v.x, v.y, v.z};
  }
  [[nodiscard]] SpaceRay into(const SpaceRay& ray) const { return {into(ray.from), into(ray.along)}; }
  [[nodiscard]] SpaceVector out_of(SpaceVector v) const { return v.x * first + v.y * second + v.z * third; }
  [[nodiscard]] SpacePoint out_of(SpacePoint p) const { return origin + out_of(SpaceVector{p.x, p.y, p.z}); }
};

}  // namespace prismwright
