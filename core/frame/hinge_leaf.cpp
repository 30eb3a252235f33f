#include "core/frame/hinge_leaf.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"

namespace prismwright {

PlateChain leaf_outline(const LeafPlan& leaf) {
  const double radius = leaf.knuckle_mm;
  const double rise = std::asin(leaf.back_y_mm / radius);
  const double flange_y = leaf.front_y_mm + leaf.flange_mm;
  // The block keeps the knuckle's brass round the pin on the panel's side too.
  const double block_y = std::max(flange_y, radius);
  const PlatePoint foot{-radius * std::cos(rise), leaf.back_y_mm};
  const PlatePoint nose{radius, 0};
  PlateChain chain{{foot, nose, kPi + rise, {}, radius}};
  const auto line_to = [&chain](PlatePoint p) { chain.push_back({chain.back().to, p, 0, {}, 0}); };
  line_to({radius, block_y});
  if (block_y > flange_y) {
    line_to({leaf.edge_x_mm, block_y});
    line_to({leaf.edge_x_mm, flange_y});
  }
  line_to({leaf.flange_x_mm, flange_y});
  line_to({leaf.flange_x_mm, leaf.front_y_mm});
  line_to({leaf.edge_x_mm, leaf.front_y_mm});
  line_to({leaf.edge_x_mm, leaf.back_y_mm});
  line_to(foot);
  return chain;
}

}  // namespace prismwright
