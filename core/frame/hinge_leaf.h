#pragma once

#include "core/frame/plate_chain.h"

namespace prismwright {

/// A hinge leaf in plan view. x runs seaward and y into the leaf's own panel, both from the pin's axis: so y is
/// negative across the side plane. mm.
struct LeafPlan {
  double pin_mm = 5;            ///< diameter
  double knuckle_mm = 5;        ///< radius of the round that faces the other side
  double back_y_mm = 0;         ///< the rib's outer face; less than the knuckle's radius
  double front_y_mm = 0;        ///< the rib's inner face
  double edge_x_mm = 0;         ///< the rib's outer edge; beyond the knuckle, negative
  double flange_x_mm = 0;       ///< where the flange on the rib's inner face ends, negative
  double flange_mm = 0;         ///< thickness of the flange
  double inside_radius_mm = 0;  ///< of the cutter; 0: inside corners are sharp
};

/// Anticlockwise: the knuckle's round, a block from it to the rib's edge, and the flange. Inside corners have
/// the cutter's radius: fillets beside the knuckle and over the flange, and at the rib's own sharp corner a
/// relief, a half round through that corner (smaller where the rib is thin).
PlateChain leaf_outline(const LeafPlan& leaf);

}  // namespace prismwright
