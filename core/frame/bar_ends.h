#pragma once

#include <vector>

#include "core/frame/rib_holes.h"

namespace prismwright {

/// The rectangle that a bar turned about its panel's axis has as its section.
struct BarSection {
  double inner_r_mm = 0;  ///< along the panel's axis
  double outer_r_mm = 0;
  double near_mm = 0;  ///< away from the axis
  double far_mm = 0;
  bool upper = true;  ///< which half of the ring
};

/// A bar where a rib ends it. In the panel's frame a place of the rib's plane is x = u cos s + d n_x,
/// y = u sin s + d n_y with s the side's azimuth from the panel's axis and n into the panel.
class BarEnd {
 public:
  BarEnd(const BarSection& section, const RibPlan& rib, double axis_deg);

  /// Whether any of the bar comes to the rib's inner face.
  [[nodiscard]] bool reaches() const;
  /// Whether the bar is cut off at the level of the axis before it comes to the rib.
  [[nodiscard]] bool ends_level() const;
  /// Places on the rib's inner face from which a level bore `hold_mm` deep, square to the rib, keeps `wall_mm`
  /// from its axis to every face of the bar. From the inner end of the section outward.
  [[nodiscard]] std::vector<PlatePoint> bore_places(double hold_mm, double wall_mm) const;

 private:
  [[nodiscard]] double u_at(double x, double depth) const;
  [[nodiscard]] double y_at(double x, double depth) const;
  [[nodiscard]] bool stays_inside(PlatePoint p, double hold_mm, double wall_mm) const;

  BarSection section_;
  double depth_mm_;
  double cos_side_;
  double sin_side_;
  double normal_x_;
  double normal_y_;
};

}  // namespace prismwright
