#pragma once

#include <TopoDS_Shape.hxx>

#include "core/lens/plan.h"

namespace prismwright {

/// Two ways of cutting the same: should the kernel fail at one, the other goes about it differently.
enum class CuttingWay {
  wedge,          ///< the common part with one wedge that all planes bound (the quicker)
  plane_by_plane  ///< a block cut away behind each plane in turn
};

/// Cuts a turned ring by the side planes, by a flat inner face where there is one and, for a half, by the plane
/// through its turning axis. The ring lies in the frame of an axis that falls seaward by `dip` radians: seen
/// from there the upright side planes lean, and splinters under 2e-6 of the volume that they leave at the level
/// plane are left out. Throws Standard_Failure where the kernel gives up.
TopoDS_Shape trimmed(const TopoDS_Shape& ring, const Trim& trim, double dip, CuttingWay way);

}  // namespace prismwright
