#pragma once

#include <string>

#include <TopoDS_Solid.hxx>

#include "core/base/outcome.h"
#include "geometry/mould_rim.h"
#include "geometry/mould_sheet.h"

namespace prismwright {

/// The two halves of a block, in the frame whose +Z is the draw.
struct MouldHalves {
  TopoDS_Solid lower;
  TopoDS_Solid upper;
};

/// Puts the halves together from the master's own faces, the parting sheet and the walls of the block between
/// two heights. Nothing is cut: the halves share the sheet's faces and the master's, so that they and the
/// master fill the block. Refused (code "solid") where a half is not one closed valid solid.
Outcome<MouldHalves> mould_halves(const RimmedMaster& master, const PartingSheet& sheet, const BlockPlan& plan,
                                  double bottom_mm, double top_mm, SharedEdges& edges, const std::string& mark);

}  // namespace prismwright
