#include "geometry/pictures/view_plane.h"

#include <cmath>

#include "core/base/angle.h"

namespace prismwright {

namespace {

constexpr double kUpright_deg = 90 - 1e-6;

}  // namespace

ViewPlane view_plane(const PictureEye& eye) {
  const bool upright = std::abs(eye.elevation_deg) > kUpright_deg;
  const double azimuth = upright ? radians(-90) : radians(eye.azimuth_deg);
  ViewPlane plane;
  plane.eye = direction_at(azimuth, radians(eye.elevation_deg));
  if (upright) plane.eye = {0, 0, eye.elevation_deg > 0 ? 1.0 : -1.0};
  plane.right = upright ? SpaceVector{1, 0, 0} : SpaceVector{-std::sin(azimuth), std::cos(azimuth), 0};
  plane.up = cross(plane.eye, plane.right);
  return plane;
}

}  // namespace prismwright
