#pragma once

#include <vector>

#include "core/frame/door_places.h"
#include "core/frame/plate.h"

namespace prismwright {

/// Those edges of a closed polygon that come within 100 mm of some heights: enough to tell, for places within
/// the heights, whether they lie inside and how far the polygon is.
class PlateEdges {
 public:
  static constexpr double kReach_mm = 100;
  PlateEdges(const PlateOutline& outline, HeightRange heights);

  [[nodiscard]] bool empty() const { return edges_.empty(); }
  [[nodiscard]] bool holds(PlatePoint p) const;
  /// Distance to the nearest edge, mm; `kReach_mm` where none is nearer.
  [[nodiscard]] double distance_mm(PlatePoint p) const;
  /// Stretches of u that edges take up between the heights, their bounds not counted.
  void append_shadows(HeightRange heights, std::vector<HeightRange>& shadows) const;

 private:
  struct Edge {
    PlatePoint from;
    PlatePoint to;
  };
  std::vector<Edge> edges_;
};

}  // namespace prismwright
