#pragma once

#include <TopoDS_Shape.hxx>

#include "core/lens/plan.h"

namespace prismwright {

/// Two ways of cutting the same: should the kernel fail at one, the other goes about it differently.
enum class CuttingWay {
  wedge,          ///< the common part with one wedge that all planes bound (the quicker)
  plane_by_plane  ///< a block cut away behind each plane in turn
};

/// Cuts a turned ring, in its panel's own frame, by the side planes and, for a half, by the level plane.
/// Throws Standard_Failure where the kernel gives up.
TopoDS_Shape trimmed(const TopoDS_Shape& ring, const Trim& trim, CuttingWay way);

}  // namespace prismwright
