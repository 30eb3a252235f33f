#pragma once

#include <vector>

#include "core/base/space.h"
#include "geometry/mould_skin.h"

namespace prismwright {

/// A master's skin seen along one direction: which places lie behind others.
class MouldShadow {
 public:
  /// `along` is a unit vector.
  MouldShadow(const MouldSkin& skin, SpaceVector along);

  /// Whether the line from the middle of a triangle, on the side that the triangle faces, meets the skin again.
  [[nodiscard]] bool hides(std::size_t triangle) const;
  /// How far a place lies from the nearest edge of the skin between what faces the one and the other way,
  /// square to the direction, mm.
  [[nodiscard]] double reach_mm(const gp_Pnt& place) const;
  /// Heights along the direction at which the line through a place meets the skin, rising.
  [[nodiscard]] std::vector<double> meetings(double first_mm, double second_mm) const;
  /// The place as (first, second, along).
  [[nodiscard]] gp_Pnt seen(const gp_Pnt& place) const;
  [[nodiscard]] double height_mm() const { return high_ - low_; }
  [[nodiscard]] double low_mm() const { return low_; }
  [[nodiscard]] double high_mm() const { return high_; }

 private:
  struct Segment {
    double x0, y0, x1, y1;
  };
  void lay_cells();
  void lay_rim();
  [[nodiscard]] std::size_t cell(double x, double y) const;

  const MouldSkin& skin_;
  SpaceFrame frame_;
  std::vector<gp_Pnt> places_;
  std::vector<std::vector<int>> cells_;
  std::vector<Segment> rim_;
  double x0_ = 0, y0_ = 0, step_x_ = 1, step_y_ = 1;
  double low_ = 0, high_ = 0;
};

/// A right-handed frame whose third direction is `along` (a unit vector); first and second lie level where
/// they can.
SpaceFrame frame_along(SpaceVector along);

}  // namespace prismwright
