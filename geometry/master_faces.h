#pragma once

#include <vector>

#include <TopoDS_Shape.hxx>

#include "geometry/master.h"

namespace prismwright {

/// What each face of a casting is, in the order in which TopExp_Explorer meets them: by a place within the
/// face, which lies on a turned face of the profile (within 1e-3 mm), on the flat inner face, on the level
/// joint of a half, or else on an end.
std::vector<MasterFace> casting_faces(const TopoDS_Shape& casting, const PlannedPrism& stocked,
                                      const WorksSettings& settings);

}  // namespace prismwright
