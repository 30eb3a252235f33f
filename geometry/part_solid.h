#pragma once

#include <string>

#include <TopoDS_Shape.hxx>

#include "core/base/outcome.h"
#include "core/frame/frame_plan.h"

namespace prismwright {

/// A part in its own frame, with its volume.
struct PartSolid {
  TopoDS_Shape shape;
  double volume_mm3 = 0;
};

/// Solids of one part each, checked: closed, and of the closed form's volume within 0.01 % (what is bored or
/// cut through an edge: valid by the kernel's own check, and between its closed form and the form without those
/// cuts). Code "frame-solid". Throw Standard_Failure where the modeller does.
Outcome<PartSolid> checked_solid(const FlatPart& part);
Outcome<PartSolid> checked_solid(const RoundPart& part);
/// In the frame of its panel.
Outcome<PartSolid> checked_solid(const TurnedBar& bar);
/// Of a rib that has no flat part: in the rib's own frame.
Outcome<PartSolid> checked_solid(const RibPlan& rib);
/// Of a ring that has no flat part: in the lens frame.
Outcome<PartSolid> checked_solid(const RingPlan& ring);

Problem no_frame_solid(const std::string& mark, const char* why);

}  // namespace prismwright
