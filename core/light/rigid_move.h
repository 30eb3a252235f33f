#pragma once

#include "core/base/space.h"

namespace prismwright {

/// A small move of a stiff body: a turn about a place, then a shift.
struct RigidMove {
  SpacePoint about;
  SpaceVector turn{0, 0, 0};   ///< axis by right hand rule, its length the angle in radians
  SpaceVector shift{0, 0, 0};  ///< mm

  /// A direction of the body after the move.
  [[nodiscard]] SpaceVector turned(SpaceVector v) const { return rotated(v, 1); }
  [[nodiscard]] SpacePoint moved(SpacePoint p) const { return about + rotated(p - about, 1) + shift; }
  [[nodiscard]] SpaceRay moved(const SpaceRay& ray) const { return {moved(ray.from), turned(ray.along)}; }
  /// The same the other way: what stands in space as the body saw it before the move.
  [[nodiscard]] SpaceVector back(SpaceVector v) const { return rotated(v, -1); }
  [[nodiscard]] SpacePoint back(SpacePoint p) const { return about + rotated(p - shift - about, -1); }
  [[nodiscard]] SpaceRay back(const SpaceRay& ray) const { return {back(ray.from), back(ray.along)}; }

 private:
  /// Rodrigues' formula.
  [[nodiscard]] SpaceVector rotated(SpaceVector v, double way) const {
    const double angle = length(turn);
    if (angle == 0) return v;
    const SpaceVector axis = (way / angle) * turn;
    return std::cos(angle) * v + std::sin(angle) * cross(axis, v) +
           ((1 - std::cos(angle)) * dot(axis, v)) * axis;
  }
};

}  // namespace prismwright
