#pragma once

#include <TopoDS_Face.hxx>
#include <TopoDS_Wire.hxx>

#include "core/optics/profile.h"
#include "geometry/convert.h"

namespace prismwright {

/// The closed outline of a profile in its plane: one edge for each face of the profile, neighbours sharing
/// their corner.
///
/// Straight faces become lines. Arcs become circles whose X axis points away from the turning line, so that
/// turning them gives a torus or sphere where the kernel has one. True curves become C2 cubic B-splines
/// through all their points, with the exact slope at both ends; of fewer than thirteen points, the exact slope
/// is held at every one. Faces shorter than 1e-6 mm are left out. Throws Standard_Failure where the profile is
/// not closed or a face cannot be made.
TopoDS_Wire profile_wire(const Profile& profile, const ProfilePlane& plane);

/// The flat face that the outline bounds.
TopoDS_Face profile_face(const Profile& profile, const ProfilePlane& plane);

}  // namespace prismwright
