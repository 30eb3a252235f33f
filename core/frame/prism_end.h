#pragma once

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
///   turned about the panel axis:  u = (r - d n_x) / cos s, y = u sin s + d n_y, v = +-sqrt(z^2 - y^2).
/// A profile point with |z| < |y| does not reach the plane. Own derivation.
class EndView {
 public:
  EndView(const PlannedPrism& prism, Side side);

  /// False where the plane runs along the turned rings (sides square to the panel's axis): no ring ends there.
  [[nodiscard]] bool sees_ends() const;
  /// v^2 less the square of the level that a half keeps to, mm2: below 0 the point does not reach the plane.
  [[nodiscard]] double reach(SectionPoint p, double depth_mm) const;
  /// Where the point (z not negative for panel turning) meets the plane; one that falls short of it is put on
  /// the level that bounds the half, so that outlines stay closed.
  [[nodiscard]] PlatePoint at(SectionPoint p, double depth_mm) const;
  /// Least u at which the panel's other side leaves room, mm.
  [[nodiscard]] double least_u(double depth_mm) const;
  /// How much a step along the profile may grow on the plane.
  [[nodiscard]] double stretch() const;

 private:
  TurningAxis turning_;
  Half half_;
  double level_mm_;
  double set_back_mm_;
  double cos_side_;
  double sin_side_;
  double normal_x_;
  double normal_y_;
  double sin_width_;
  double cos_width_;
};

/// Where the prism cuts the plane at one depth. Halves and belt pieces give one outline at most, a whole ring
/// up to two. Polygons within `chord_mm`.
PlateRegion end_slice(const PlannedPrism& prism, Side side, double depth_mm, double chord_mm);

/// Everything that the prism covers of the planes from one depth to another, seen along the rib's normal.
PlateRegion swept_end(const PlannedPrism& prism, Side side, double from_mm, double to_mm, double chord_mm);

}  // namespace prismwright
