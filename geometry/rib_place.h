#pragma once

#include <gp_Ax1.hxx>
#include <gp_Ax3.hxx>
#include <gp_Trsf.hxx>
#include <gp_Vec.hxx>

#include "core/base/angle.h"
#include "core/base/space.h"
#include "geometry/plate_solid.h"

namespace prismwright {

/// Turns about the upright lens axis, degrees anticlockwise seen from above.
inline gp_Trsf turn_about_lens(double azimuth_deg) {
  gp_Trsf turn;
  turn.SetRotation(gp_Ax1(gp_Pnt(0, 0, 0), gp_Dir(0, 0, 1)), radians(azimuth_deg));
  return turn;
}

/// From the frame of a rib's side plane to the lens frame: there u runs along +X, v along +Z, and the depth
/// from the side plane into the panel along +Y for a clockwise side, along -Y for an anticlockwise one.
inline gp_Trsf rib_turn(const RibPlan& rib) { return turn_about_lens(rib.azimuth_deg); }

/// From the rib's own frame (see plate_solid), whose depth counts from its outer face, to the frame of its side
/// plane.
inline gp_Trsf rib_set_back(const RibPlan& rib) {
  gp_Trsf shift;
  shift.SetTranslation(gp_Vec(0, (rib.side == Side::clockwise ? 1 : -1) * rib.set_back_mm, 0));
  return shift;
}

/// The rib as a plate: its inner face stands `thickness_mm` inside the side plane, its outer face
/// `set_back_mm`.
inline PlateShape plate_of(const RibPlan& rib) {
  PlateShape plate{rib.outline, {}, rib.thickness_mm - rib.set_back_mm, rib.pocket_mm, rib.side};
  for (const Pocket& pocket : rib.pockets) plate.pockets.push_back(pocket.outline);
  return plate;
}

/// From a flat part's own frame to the lens frame.
inline gp_Trsf frame_place(const SpaceFrame& frame) {
  const auto& [o, x, y, z] = frame;
  gp_Trsf place;
  place.SetTransformation(gp_Ax3(gp_Pnt(o.x, o.y, o.z), gp_Dir(z.x, z.y, z.z), gp_Dir(x.x, x.y, x.z)),
                          gp_Ax3());
  return place;
}

}  // namespace prismwright
