#pragma once

#include <string>
#include <vector>

#include <TopoDS_Shape.hxx>

#include "core/base/outcome.h"
#include "core/base/progress.h"
#include "core/frame/frame_plan.h"

namespace prismwright {

/// A metal part as a solid in the lens frame, mm.
struct FrameBody {
  std::string mark;
  TopoDS_Shape shape;  ///< congruent parts share it, each with its own location
  double volume_mm3 = 0;
  double mass_g = 0;  ///< by the density of its metal
  PartKind kind = PartKind::side_rib;
  PartMetal metal = PartMetal::brass;
  PartMaking making = PartMaking::cut_flat;
  int panel = 0;  ///< 0: of the whole lens
};

/// Solids of every part of the frame: ribs first, then rings, both in the order of the plan, then all other
/// flat parts, turned bars and round parts. A rib or ring that stands among the flat parts too has their holes;
/// one that does not is made from its outline alone. Parts of one shape key share one solid.
///
/// A part whose faces do not close, or whose volume is not that of its closed form within 0.01 %, is refused
/// with its mark; so is one that a bore or a hole through its edge leaves with less than its closed form, or
/// that the kernel's own check then refuses.
Outcome<std::vector<FrameBody>> make_frame(const FramePlan& frame, const Progress& progress = {});

}  // namespace prismwright
