#pragma once

#include <string>

#include <TopoDS_Shape.hxx>
#include <TopoDS_Solid.hxx>
#include <gp_Pnt.hxx>

#include "core/base/outcome.h"

namespace prismwright {

/// The one solid in a shape, turned outward; a Problem (code "solid") says what is wrong when there is not
/// exactly one, or it is not closed, not valid by the kernel's own check or without volume.
Outcome<TopoDS_Solid> sound_solid(const TopoDS_Shape& shape, const std::string& mark);

/// Volume and centre of gravity of a solid.
struct SolidMeasure {
  double volume_mm3 = 0;  ///< negative when the solid is turned inside out
  gp_Pnt centre_of_gravity_mm;
};
SolidMeasure measured(const TopoDS_Shape& solid);
/// The measure of a solid whose volume is known from elsewhere. The kernel's plain quadrature was seen to be
/// off by 7e-4 on long faces between two cuts that run into each other; where it is off by more than 1e-6, the
/// kernel measures again until it agrees with itself, and the nearer of the two is given.
SolidMeasure measured(const TopoDS_Shape& solid, double known_mm3);

}  // namespace prismwright
