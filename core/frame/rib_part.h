#pragma once

#include "core/frame/frame_plan.h"

namespace prismwright {

/// The rib as a plate to be cut: same mark, outline, pockets and thickness, no holes yet. Its front face is the
/// rib's inner face, in which the pockets open; y is v, and x is u for an anticlockwise side, -u for a
/// clockwise one, so that its frame is right-handed. Depth 0 is the outer face: the side plane, or
/// `set_back_mm` inside it. Equal shape keys: equal plates.
FlatPart rib_part(const RibPlan& rib);

}  // namespace prismwright
