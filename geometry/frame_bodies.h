#pragma once

#include <string>
#include <vector>

#include <TopoDS_Shape.hxx>

#include "core/base/outcome.h"
#include "core/base/progress.h"
#include "core/frame/frame_plan.h"

namespace prismwright {

/// A brass part as a solid in the lens frame, mm.
struct FrameBody {
  std::string mark;
  TopoDS_Shape shape;
  double volume_mm3 = 0;
  double mass_g = 0;  ///< brass 8.49 g/cm3
};

/// Solids of all ribs and rings, ribs first, in the order of the frame plan. Ribs of one shape key and side
/// share one solid, turned to their places. A plate whose faces do not close, or whose volume is not that of
/// its outlines within 0.01 %, is refused with its mark.
Outcome<std::vector<FrameBody>> make_frame(const FramePlan& frame, const Progress& progress = {});

}  // namespace prismwright
