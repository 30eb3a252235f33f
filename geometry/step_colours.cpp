#include "geometry/step_colours.h"

#include <Interface_InterfaceModel.hxx>
#include <STEPConstruct_Styles.hxx>
#include <StepRepr_RepresentationContext.hxx>
#include <StepVisual_Colour.hxx>
#include <StepVisual_MechanicalDesignGeometricPresentationRepresentation.hxx>
#include <StepVisual_PresentationStyleAssignment.hxx>
#include <StepVisual_StyledItem.hxx>

namespace prismwright {

bool add_colour(const Handle(XSControl_WorkSession) & session, const TopoDS_Shape& shape,
                const Quantity_ColorRGBA& colour) {
  STEPConstruct_Styles styles(session);
  const Handle(StepRepr_RepresentationContext) context = styles.FindContext(shape);
  if (context.IsNull()) return false;
  const Handle(StepVisual_Colour) rgb = STEPConstruct_Styles::EncodeColor(colour.GetRGB());
  const double let_through = 1 - static_cast<double>(colour.Alpha());
  const Handle(StepVisual_Colour) rendered = let_through > 0 ? rgb : Handle(StepVisual_Colour)();
  const Handle(StepVisual_PresentationStyleAssignment) look = styles.MakeColorPSA(
      Handle(StepRepr_RepresentationItem)(), rgb, Handle(StepVisual_Colour)(), rendered, let_through);
  const Handle(StepVisual_StyledItem) styled = styles.AddStyle(shape, look, Handle(StepVisual_StyledItem)());
  Handle(StepVisual_MechanicalDesignGeometricPresentationRepresentation) presented;
  if (styled.IsNull() || !styles.CreateMDGPR(context, presented)) return false;
  session->Model()->AddWithRefs(presented);
  return true;
}

}  // namespace prismwright
