#pragma once

#include <TopoDS_Shape.hxx>
#include <gp_Pnt.hxx>

#include "core/works/master_stretch.h"

namespace prismwright {

/// A solid stretched along the directions of a master. An even stretch keeps analytic faces; an uneven one
/// turns them into NURBS first, which it carries exactly. Faces keep their order. Throws Standard_Failure.
TopoDS_Shape stretched_shape(const TopoDS_Shape& casting, const MasterStretch& stretch);

/// The place of the casting that lies there on the master.
gp_Pnt shrunk(const gp_Pnt& on_master, const MasterStretch& stretch);

}  // namespace prismwright
