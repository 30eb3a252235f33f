#pragma once

#include <gp_Ax1.hxx>
#include <gp_Trsf.hxx>

#include "core/base/angle.h"
#include "geometry/plate_solid.h"

namespace prismwright {

/// Turns about the upright lens axis, degrees anticlockwise seen from above.
inline gp_Trsf turn_about_lens(double azimuth_deg) {
  gp_Trsf turn;
  turn.SetRotation(gp_Ax1(gp_Pnt(0, 0, 0), gp_Dir(0, 0, 1)), radians(azimuth_deg));
  return turn;
}

/// From a rib's own frame (see plate_solid) to the lens frame.
inline gp_Trsf rib_turn(const RibPlan& rib) { return turn_about_lens(rib.azimuth_deg); }

inline PlateShape plate_of(const RibPlan& rib) {
  PlateShape plate{rib.outline, {}, rib.thickness_mm, rib.pocket_mm, rib.side};
  for (const Pocket& pocket : rib.pockets) plate.pockets.push_back(pocket.outline);
  return plate;
}

}  // namespace prismwright
