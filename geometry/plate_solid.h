#pragma once

#include <vector>

#include <TopoDS_Shape.hxx>

#include "core/frame/frame_plan.h"

namespace prismwright {

/// A flat plate: `outline` from its outer face (depth 0) to its inner face (depth `thickness_mm`), with
/// pockets of `pocket_mm` cut into the inner face. A pocket as deep as the plate goes through.
struct PlateShape {
  PlateOutline outline;
  std::vector<PlateOutline> pockets;  ///< inside the outline, clear of it and of each other
  double thickness_mm = 0;
  double pocket_mm = 0;
  Side side = Side::clockwise;  ///< which way the depth runs
};

/// The plate as one closed solid in its rib's own frame: u along +X, v along +Z, and the depth along -Y for
/// an anticlockwise side, along +Y for a clockwise side (a rib stands at the azimuth of its side when this is
/// turned about Z by it). Built face by face on shared edges, without a cut. Throws Standard_Failure when the
/// modeller refuses a face.
TopoDS_Shape plate_solid(const PlateShape& plate);

/// Outline area times thickness less pocket areas times their depth, mm3.
double plate_volume_mm3(const PlateShape& plate);

}  // namespace prismwright
