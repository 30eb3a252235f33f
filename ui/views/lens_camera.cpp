#include "ui/views/lens_camera.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include <gp_Vec.hxx>

#include "core/base/angle.h"

namespace prismwright {
namespace {

constexpr double kOutsideOpening_deg = 15;  // narrow: near panels do not swell
constexpr double kFrameMargin = 1.08;
constexpr double kLeastOpening_deg = 4;
constexpr double kGreatestOpening_deg = 110;
constexpr double kDegreesPerPixelOutside = 0.35;

double half_tangent(double opening_deg) { return std::tan(radians(opening_deg / 2)); }

}  // namespace

/// Line of sight, right and up of the eye.
struct LensCamera::Axes {
  gp_Vec sight, right, up;
};

LensCamera::Axes LensCamera::axes() const {
  const double a = radians(azimuth_deg_);
  const double e = radians(elevation_deg_);
  const gp_Vec out(std::cos(e) * std::cos(a), std::cos(e) * std::sin(a), std::sin(e));
  const gp_Vec left(-std::sin(a), std::cos(a), 0);  // left for one who looks outward
  const gp_Vec up(-std::sin(e) * std::cos(a), -std::sin(e) * std::sin(a), std::cos(e));
  if (stand_ == Stand::lamp) return {out, left.Reversed(), up};
  return {out.Reversed(), left, up};
}

void LensCamera::standOutside(double azimuth_deg, double elevation_deg) {
  stand_ = Stand::outside;
  azimuth_deg_ = azimuth_deg;
  elevation_deg_ = std::clamp(elevation_deg, -90.0, 90.0);
  pan_right_mm_ = pan_up_mm_ = 0;
}

void LensCamera::standInFocus(double azimuth_deg, double elevation_deg, double opening_deg) {
  stand_ = Stand::lamp;
  azimuth_deg_ = azimuth_deg;
  elevation_deg_ = std::clamp(elevation_deg, -89.0, 89.0);
  opening_deg_ = std::clamp(opening_deg, kLeastOpening_deg, kGreatestOpening_deg);
}

void LensCamera::turn(double dx_px, double dy_px, double view_height_px) {
  if (stand_ == Stand::lamp) {
    // The glass under the pointer stays under it.
    const double step = opening_deg_ / std::max(view_height_px, 1.0);
    azimuth_deg_ += dx_px * step;
    elevation_deg_ = std::clamp(elevation_deg_ + dy_px * step, -89.0, 89.0);
  } else {
    azimuth_deg_ -= dx_px * kDegreesPerPixelOutside;
    elevation_deg_ = std::clamp(elevation_deg_ + dy_px * kDegreesPerPixelOutside, -90.0, 90.0);
  }
  azimuth_deg_ = std::remainder(azimuth_deg_, 360.0);
}

double LensCamera::mmPerPixel(double view_height_px) const {
  return 2 * distance_mm_ * half_tangent(kOutsideOpening_deg) / std::max(view_height_px, 1.0);
}

void LensCamera::pan(double dx_px, double dy_px, double view_height_px) {
  if (stand_ == Stand::lamp) return turn(dx_px, dy_px, view_height_px);
  pan_right_mm_ -= dx_px * mmPerPixel(view_height_px);
  pan_up_mm_ += dy_px * mmPerPixel(view_height_px);
}

void LensCamera::zoom(double factor, double x_px, double y_px, double view_height_px) {
  if (stand_ == Stand::lamp) {
    opening_deg_ = std::clamp(opening_deg_ / factor, kLeastOpening_deg, kGreatestOpening_deg);
    return;
  }
  const double before = mmPerPixel(view_height_px);
  distance_mm_ = std::clamp(distance_mm_ / factor, 20.0, 100000.0);
  const double gain = before - mmPerPixel(view_height_px);
  pan_right_mm_ += x_px * gain;
  pan_up_mm_ -= y_px * gain;
}

void LensCamera::frameOutside(const std::vector<gp_Pnt>& points, double aspect) {
  const Axes a = axes();
  const double up_tangent = half_tangent(kOutsideOpening_deg) / kFrameMargin;
  const double right_tangent = up_tangent * aspect;
  // Each point must lie inside the four planes of the picture: |x - px| <= t (d - n), n towards the eye. For
  // a given distance the pan may lie in an interval; the least distance is where the interval shuts.
  const double least = std::numeric_limits<double>::lowest();
  double right = least, left = least, top = least, bottom = least;
  for (const gp_Pnt& p : points) {
    const gp_Vec v(p.XYZ());
    const double near = -v.Dot(a.sight);
    right = std::max(right, v.Dot(a.right) + right_tangent * near);
    left = std::max(left, -v.Dot(a.right) + right_tangent * near);
    top = std::max(top, v.Dot(a.up) + up_tangent * near);
    bottom = std::max(bottom, -v.Dot(a.up) + up_tangent * near);
  }
  distance_mm_ = std::max({(right + left) / (2 * right_tangent), (top + bottom) / (2 * up_tangent), 20.0});
  pan_right_mm_ = (right - left) / 2;
  pan_up_mm_ = (top - bottom) / 2;
}

void LensCamera::frameFromLamp(const std::vector<gp_Pnt>& points, double aspect) {
  gp_XYZ middle(0, 0, 0);
  for (const gp_Pnt& p : points) middle += p.XYZ() / static_cast<double>(points.size());
  if (middle.Modulus() < 1e-6) return;
  azimuth_deg_ = degrees(std::atan2(middle.Y(), middle.X()));
  elevation_deg_ = std::clamp(degrees(std::atan2(middle.Z(), std::hypot(middle.X(), middle.Y()))), -89.0, 89.0);
  const Axes a = axes();
  double tangent = 0;
  for (const gp_Pnt& p : points) {
    const gp_Vec v(p.XYZ());
    const double ahead = std::max(v.Dot(a.sight), 1e-3 * v.Magnitude());
    tangent = std::max({tangent, std::abs(v.Dot(a.up)) / ahead, std::abs(v.Dot(a.right)) / ahead / aspect});
  }
  const double opening_deg = 2 * degrees(std::atan(tangent * 1.3));
  opening_deg_ = std::clamp(opening_deg, kLeastOpening_deg, kGreatestOpening_deg);
}

void LensCamera::frame(const std::vector<gp_Pnt>& points, double width_px, double height_px) {
  if (points.empty()) return;
  const double aspect = std::max(width_px, 1.0) / std::max(height_px, 1.0);
  stand_ == Stand::lamp ? frameFromLamp(points, aspect) : frameOutside(points, aspect);
}

void LensCamera::apply(const Handle(Graphic3d_Camera) & camera) const {
  const Axes a = axes();
  gp_Pnt eye(0, 0, 0);
  double ahead = 100;
  if (stand_ == Stand::outside) {
    ahead = distance_mm_;
    eye.Translate(a.sight * -distance_mm_ + a.right * pan_right_mm_ + a.up * pan_up_mm_);
  }
  camera->SetProjectionType(Graphic3d_Camera::Projection_Perspective);
  camera->SetFOVy(stand_ == Stand::lamp ? opening_deg_ : kOutsideOpening_deg);
  camera->SetUp(gp_Dir(a.up));
  camera->SetEyeAndCenter(eye, eye.Translated(a.sight * ahead));
}

}  // namespace prismwright
