#include "core/frame/end_view.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"

namespace prismwright {
namespace {

constexpr double kSquareOn = 1e-6;  // cosine of a side square to the panel's axis

}  // namespace

EndView::EndView(const PlannedPrism& prism, Side side, Sheet sheet)
    : turning_(prism.turning),
      half_(prism.trim.half),
      sheet_(sheet),
      level_mm_(prism.trim.half == Half::whole ? 0 : prism.trim.half_gap_mm),
      set_back_mm_(prism.trim.set_back_mm),
      flat_inner_mm_(turning_ == TurningAxis::lens ? prism.trim.flat_inner_mm : std::nullopt) {
  const bool clockwise = side == Side::clockwise;
  const double azimuth = radians(clockwise ? prism.trim.clockwise_side_deg : prism.trim.anticlockwise_side_deg);
  const double width = radians(prism.trim.anticlockwise_side_deg - prism.trim.clockwise_side_deg);
  cos_side_ = std::cos(azimuth);
  sin_side_ = std::sin(azimuth);
  normal_x_ = clockwise ? -sin_side_ : sin_side_;
  normal_y_ = clockwise ? cos_side_ : -cos_side_;
  sin_width_ = std::sin(width);
  cos_width_ = std::cos(width);
  if (turning_ == TurningAxis::lens) return;
  axis_z_mm_ = prism.axis_z_mm;
  cos_dip_ = std::cos(radians(prism.axis_dip_deg));
  sin_dip_ = std::sin(radians(prism.axis_dip_deg));
}

bool EndView::sees_ends() const { return turning_ == TurningAxis::lens || std::abs(cos_side_) > kSquareOn; }

double EndView::stretch() const {
  if (turning_ == TurningAxis::lens) return 1;
  return (cos_dip_ + std::abs(sin_dip_)) / std::max(kSquareOn, std::abs(cos_side_));
}

// With t away from the axis in the upright plane that holds it, x = r cos q + t sin q and y = y0 + k t.
EndView::Meeting EndView::meeting(SectionPoint p, double depth_mm) const {
  const double y0 = (p.r * cos_dip_ - depth_mm * normal_x_) / cos_side_ * sin_side_ + depth_mm * normal_y_;
  const double k = sin_dip_ * sin_side_ / cos_side_;
  const double square = 1 + k * k;
  return {y0, k, -y0 * k / square, square * p.z * p.z - y0 * y0};
}

double EndView::reach(SectionPoint p, double depth_mm) const {
  if (turning_ == TurningAxis::lens) return 1;
  return std::min(reach_of_plane(p, depth_mm), reach_of_level(p, depth_mm));
}

double EndView::reach_of_plane(SectionPoint p, double depth_mm) const {
  return turning_ == TurningAxis::lens ? 1 : meeting(p, depth_mm).inside;
}

double EndView::reach_of_level(SectionPoint p, double depth_mm) const {
  if (turning_ == TurningAxis::lens || half_ == Half::whole) return 1;
  const Meeting m = meeting(p, depth_mm);
  const double t = half_ == Half::lower ? -level_mm_ : level_mm_;
  const double y = m.y0 + m.k * t;
  const double outside = p.z * p.z - y * y - t * t;
  // Where the plane leans so far that the level lies under the place it is nearest to, all of the near sheet
  // stands above the level, and the far sheet is what lies above it.
  const bool under = half_ == Half::lower ? t > m.fold : t < m.fold;
  if (sheet_ == Sheet::near) return under ? m.inside : outside;
  return under ? -outside : -1;
}

PlatePoint EndView::at(SectionPoint p, double depth_mm) const {
  if (turning_ == TurningAxis::lens) {
    return {std::sqrt(std::max(0.0, p.r * p.r - depth_mm * depth_mm)), p.z};
  }
  const Meeting m = meeting(p, depth_mm);
  const double half_way = std::sqrt(std::max(0.0, m.inside)) / (1 + m.k * m.k);
  const bool upper = (half_ == Half::lower) == (sheet_ == Sheet::far);
  double t = m.fold + (upper ? half_way : -half_way);
  if (half_ == Half::upper) t = std::max(t, level_mm_);
  if (half_ == Half::lower) t = std::min(t, -level_mm_);
  const double u = (p.r * cos_dip_ + t * sin_dip_ - depth_mm * normal_x_) / cos_side_;
  return {u, axis_z_mm_ - p.r * sin_dip_ + t * cos_dip_};
}

bool EndView::is_folded(const std::vector<SectionPoint>& points, double depth_mm) const {
  if (turning_ == TurningAxis::lens) return false;
  if (half_ == Half::whole) return true;
  return std::any_of(points.begin(), points.end(), [&](SectionPoint p) {
    const double fold = meeting(p, depth_mm).fold;
    return half_ == Half::upper ? fold > level_mm_ : fold < -level_mm_;
  });
}

double EndView::least_u(double depth_mm) const {
  const double flat =
      flat_inner_mm_ && cos_side_ > kSquareOn ? (*flat_inner_mm_ - depth_mm * normal_x_) / cos_side_ : 0;
  if (sin_width_ < kSquareOn) return std::max(0.0, flat);
  return std::max({0.0, flat, (set_back_mm_ + depth_mm * cos_width_) / sin_width_});
}

}  // namespace prismwright
