#pragma once

#include <TopoDS_Shape.hxx>

#include "core/frame/frame_parts.h"

namespace prismwright {

/// A plate as one closed solid in its own frame: x and y in the plate, z = depth from 0 (back) to the thickness
/// (front). Lines of the outlines become planes, arcs true cylinders, a circle of two half turns one round
/// wall.
///
/// Outline, openings, pockets and round holes (with their 90 deg cones) that clear each other are built face by
/// face on shared edges, without a cut; bores, and holes that run into an edge or into another hole, are cut
/// afterwards. Pockets and openings must be clear of each other and of the outline. A hole in a pocket starts
/// in the pocket's floor. Throws Standard_Failure when the modeller refuses a face or a cut.
TopoDS_Shape flat_solid(const FlatPart& part);

/// Closed form, mm3: outline area times thickness less openings, pockets, holes with their cones and bores,
/// each as if it met no other.
double flat_volume_mm3(const FlatPart& part);

/// The part without what must be cut: bores and the holes that are not clear.
FlatPart without_cuts(const FlatPart& part);

/// A solid less round bores given in its own frame. A bore is lengthened outward by its diameter, so that it
/// opens in a curved face too. Throws Standard_Failure.
TopoDS_Shape bored(const TopoDS_Shape& solid, const std::vector<PlateBore>& bores);

}  // namespace prismwright
