#pragma once

#include "core/base/space.h"
#include "core/drawing/drawing.h"
#include "geometry/picture_studio.h"

namespace prismwright {

/// The plane that a thing is seen on by parallel rays: unit vectors to the right, up, and towards the eye.
struct ViewPlane {
  SpaceVector right;
  SpaceVector up;
  SpaceVector eye;

  /// Where a place falls, mm from where the origin falls.
  [[nodiscard]] PaperPoint flat(SpacePoint p) const {
    const SpaceVector v = p - SpacePoint{};
    return {dot(v, right), dot(v, up)};
  }
  [[nodiscard]] double depth(SpacePoint p) const { return dot(p - SpacePoint{}, eye); }
  /// The place of the plane through the origin.
  [[nodiscard]] SpacePoint place(double x, double y) const { return SpacePoint{} + x * right + y * up; }
};

/// From straight above and below the azimuth counts for nothing: x runs to the right.
ViewPlane view_plane(const PictureEye& eye);

}  // namespace prismwright
