#pragma once

#include <vector>

#include "core/frame/plate_polygons.h"

namespace prismwright {

/// The place of some outlines that is nearest to a point.
struct NearPlace {
  PlatePoint from;
  PlatePoint nearest;
  double away_mm = 0;
};

/// Finds it: a point is first held against boxes round stretches of the outlines, beginning with the one that
/// was nearest to the point before. Not for several threads at a time.
class NearestOutline {
 public:
  explicit NearestOutline(const PlateRegion& outlines);
  /// Exact for the polygons.
  [[nodiscard]] NearPlace to(PlatePoint p) const;

 private:
  struct Stretch {
    PlateOutline points;
    PlateExtent box;
  };
  bool look_at(std::size_t i, NearPlace& best) const;

  std::vector<Stretch> stretches_;
  mutable std::size_t last_ = 0;
};

}  // namespace prismwright
