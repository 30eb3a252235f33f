#pragma once

#include <TopoDS_Shape.hxx>

#include "core/base/outcome.h"
#include "core/lens/plan.h"

namespace prismwright {

/// The solid of one prism in its panel's own frame (panel axis = +X), before it is turned to its azimuth.
///
/// True curves become B-splines through the profile's points with its end tangents. The trimmed volume is held
/// against the closed integral of the trimmed ring (trimmed_volume_mm3); where it differs by more than 1e-5
/// the cut is made again, in another way or set back by up to 1e-3 mm more or less (the kernel goes wrong,
/// without saying so, where a side plane all but touches a round edge). A solid that still differs by more
/// than 1e-4, is not closed, not valid or not exactly one is refused with its mark (code "solid").
Outcome<TopoDS_Shape> prism_shape(const PlannedPrism& prism);

}  // namespace prismwright
