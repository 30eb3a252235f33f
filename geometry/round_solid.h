#pragma once

#include <TopoDS_Shape.hxx>
#include <gp_Trsf.hxx>

#include "core/frame/frame_parts.h"

namespace prismwright {

/// A turned pin, tube or screw as one closed solid in its own frame: along +Z from the origin. Its sunk head
/// (a 90 deg cone) is part of its length. Throws Standard_Failure.
TopoDS_Shape round_solid(const RoundPart& part);

/// From the part's own frame to the lens frame.
gp_Trsf round_place(const RoundPart& part);

/// Closed form, mm3.
double round_volume_mm3(const RoundPart& part);

}  // namespace prismwright
