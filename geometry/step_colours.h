#pragma once

#include <Quantity_ColorRGBA.hxx>
#include <TopoDS_Shape.hxx>
#include <XSControl_WorkSession.hxx>

namespace prismwright {

/// Gives a shape that has been handed to a STEP writer its colour in the writer's model.
///
/// The kernel's own colour writing puts colours down in the order of memory addresses, so that no two files
/// are alike; here they follow in the order of the calls. Answers false when the shape is not in the model.
bool add_colour(const Handle(XSControl_WorkSession) & session, const TopoDS_Shape& shape,
                const Quantity_ColorRGBA& colour);

}  // namespace prismwright
