#pragma once

#include <optional>
#include <vector>

#include "core/frame/plate_polygons.h"
#include "core/lens/plan.h"

namespace prismwright {

/// How the plane of a rib sees the prisms of its panel: the closed map from a profile onto the plane that
/// stands `depth` inside the side plane.
///
/// A point of the plane is u e + d n with e level along the side plane, n level into the panel, and v up. With
/// the side at the azimuth s from the panel's axis:
///   turned about the lens axis:   u = sqrt(r^2 - d^2), v = z;
///   turned about the panel axis:  u = (r - d n_x) / cos s, y = u sin s + d n_y, v = +-sqrt(z^2 - y^2);
///   about an axis that crosses the lens axis at h and falls seaward by q: with t upright across the axis,
///   x = r cos q + t sin q, u = (x - d n_x) / cos s, y = u sin s + d n_y is linear in t, and y^2 + t^2 = z^2
///   leaves a quadratic for t; v = h - r sin q + t cos q.
/// A profile point for which it has no root does not reach the plane. Own derivation.
class EndView {
 public:
  /// The quadratic has two roots: the near sheet is that of the prism's own half (of a whole ring, the upper
  /// one). The far sheet matters to a whole ring, and to a half where a leaning plane is nearest to the axis
  /// beyond the level that bounds the half.
  enum class Sheet { near, far };
  EndView(const PlannedPrism& prism, Side side, Sheet sheet = Sheet::near);

  /// False where the plane runs along the turned rings (sides square to the panel's axis): no ring ends there.
  [[nodiscard]] bool sees_ends() const;
  /// Below 0 the point does not reach the plane, or not on its own side of the level that bounds a half, mm2.
  [[nodiscard]] double reach(SectionPoint p, double depth_mm) const;
  /// The two parts of `reach`: each a quadratic along a straight step of the profile, piece by piece.
  [[nodiscard]] double reach_of_plane(SectionPoint p, double depth_mm) const;
  [[nodiscard]] double reach_of_level(SectionPoint p, double depth_mm) const;
  /// Where the point (z not negative for panel turning) meets the plane; one that falls short of it is put on
  /// the level that bounds the half, so that outlines stay closed.
  [[nodiscard]] PlatePoint at(SectionPoint p, double depth_mm) const;
  /// Whether any of the points has a place of its own on the far sheet.
  [[nodiscard]] bool is_folded(const std::vector<SectionPoint>& points, double depth_mm) const;
  /// Least u at which the panel's other side and a flat inner face leave room, mm. On the plane the flat face
  /// x = f is the upright line u = (f - d n_x) / cos s.
  [[nodiscard]] double least_u(double depth_mm) const;
  /// How much a step along the profile may grow on the plane.
  [[nodiscard]] double stretch() const;

 private:
  /// y = y0 + k t along the plane; the two roots for t lie `inside`'s root to both sides of `fold`.
  struct Meeting {
    double y0;
    double k;
    double fold;
    double inside;
  };
  [[nodiscard]] Meeting meeting(SectionPoint p, double depth_mm) const;

  TurningAxis turning_;
  Half half_;
  Sheet sheet_;
  double level_mm_;
  double set_back_mm_;
  std::optional<double> flat_inner_mm_;
  double cos_side_;
  double sin_side_;
  double normal_x_;
  double normal_y_;
  double sin_width_;
  double cos_width_;
  double axis_z_mm_ = 0;
  double cos_dip_ = 1;
  double sin_dip_ = 0;
};

}  // namespace prismwright
