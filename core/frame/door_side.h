#pragma once

#include "core/frame/frame_plan.h"

namespace prismwright {

/// The rib of a door and that of its neighbour in one side plane.
struct DoorSide {
  const RibPlan* door = nullptr;
  const RibPlan* fixed = nullptr;
  [[nodiscard]] bool whole() const { return door && fixed; }
};

}  // namespace prismwright
