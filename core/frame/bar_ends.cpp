#include "core/frame/bar_ends.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"

namespace prismwright {
namespace {

constexpr int kSteps = 24;
constexpr double kAlongRings = 1e-9;  // cosine of a side that runs along the turned rings

}  // namespace

BarEnd::BarEnd(const BarSection& section, const RibPlan& rib, double axis_deg)
    : section_(section), depth_mm_(rib.thickness_mm) {
  const double side = radians(rib.azimuth_deg - axis_deg);
  cos_side_ = std::cos(side);
  sin_side_ = std::sin(side);
  const double turn = rib.side == Side::clockwise ? 1 : -1;
  normal_x_ = -turn * sin_side_;
  normal_y_ = turn * cos_side_;
}

double BarEnd::u_at(double x, double depth) const { return (x - depth * normal_x_) / cos_side_; }
double BarEnd::y_at(double x, double depth) const { return u_at(x, depth) * sin_side_ + depth * normal_y_; }

bool BarEnd::reaches() const {
  if (cos_side_ < kAlongRings) return false;
  const double least =
      std::min(std::abs(y_at(section_.inner_r_mm, depth_mm_)), std::abs(y_at(section_.outer_r_mm, depth_mm_)));
  return section_.far_mm > least;
}

bool BarEnd::ends_level() const {
  // The place of the level cut that lies deepest in the panel: outermost along the axis, nearest to it.
  return section_.outer_r_mm * std::abs(normal_x_) - section_.near_mm * std::abs(normal_y_) > depth_mm_;
}

std::vector<PlatePoint> BarEnd::bore_places(double hold_mm, double wall_mm) const {
  std::vector<PlatePoint> places;
  if (!reaches()) return places;
  const double from_r = section_.inner_r_mm + wall_mm;
  const double to_r = section_.outer_r_mm - wall_mm;
  const double from_away = section_.near_mm + wall_mm;
  const double to_away = section_.far_mm - wall_mm;
  if (from_r > to_r || from_away > to_away) return places;
  for (int i = 0; i <= kSteps; ++i) {
    const double x = from_r + (to_r - from_r) * i / kSteps;
    const double y = y_at(x, depth_mm_);
    for (int k = kSteps; k >= 0; --k) {
      const double away = from_away + (to_away - from_away) * k / kSteps;
      if (away <= std::abs(y)) break;
      const double v = std::sqrt(away * away - y * y);
      const PlatePoint p{u_at(x, depth_mm_), section_.upper ? v : -v};
      if (stays_inside(p, hold_mm, wall_mm)) places.push_back(p);
    }
  }
  return places;
}

bool BarEnd::stays_inside(PlatePoint p, double hold_mm, double wall_mm) const {
  if (std::abs(p.v) < wall_mm) return false;
  const double x = p.u * cos_side_ + (depth_mm_ + hold_mm) * normal_x_;
  const double y = p.u * sin_side_ + (depth_mm_ + hold_mm) * normal_y_;
  const double start_y = p.u * sin_side_ + depth_mm_ * normal_y_;
  // The bore of the other end keeps to its own half of the panel.
  if (y * start_y <= 0 || std::abs(y) < wall_mm) return false;
  const double away = std::hypot(y, p.v);
  return x >= section_.inner_r_mm + wall_mm && x <= section_.outer_r_mm - wall_mm &&
         away >= section_.near_mm + wall_mm && away <= section_.far_mm - wall_mm;
}

}  // namespace prismwright
