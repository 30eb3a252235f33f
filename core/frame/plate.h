#pragma once

#include <vector>

namespace prismwright {

/// A place in a rib's own plane: u level along the plane away from the lens axis, v up (= lens z), mm.
struct PlatePoint {
  double u = 0;
  double v = 0;
};
using PlateOutline = std::vector<PlatePoint>;  ///< closed polygon, anticlockwise, first point not repeated

/// Which side of its panel a rib stands on, by azimuth seen from above.
enum class Side { clockwise, anticlockwise };

}  // namespace prismwright
