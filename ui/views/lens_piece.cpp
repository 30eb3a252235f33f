#include "ui/views/lens_piece.h"

#include <Graphic3d_AspectFillArea3d.hxx>
#include <Graphic3d_Group.hxx>
#include <Prs3d_LineAspect.hxx>
#include <Prs3d_Presentation.hxx>
#include <Prs3d_ShadingAspect.hxx>
#include <Select3D_SensitiveTriangulation.hxx>
#include <SelectMgr_EntityOwner.hxx>
#include <SelectMgr_Selection.hxx>

namespace prismwright {
namespace {

Graphic3d_MaterialAspect finish_of(SceneKind kind) {
  Graphic3d_MaterialAspect finish(Graphic3d_NameOfMaterial_Plastified);
  const double gloss = kind == SceneKind::glass ? 0.12 : 0.2;
  finish.SetAmbientColor(Quantity_Color(Quantity_NOC_WHITE));
  finish.SetDiffuseColor(Quantity_Color(Quantity_NOC_WHITE));
  finish.SetSpecularColor(Quantity_Color(gloss, gloss, gloss, Quantity_TOC_RGB));
  finish.SetShininess(kind == SceneKind::glass ? 0.75f : 0.4f);
  return finish;
}

}  // namespace

LensPiece::LensPiece(const LensPart& part) : part_(part) {
  const Handle(Prs3d_ShadingAspect) shading = new Prs3d_ShadingAspect();
  shading->SetMaterial(finish_of(part.kind));
  shading->Aspect()->SetPolygonOffset({});
  myDrawer->SetShadingAspect(shading);
  myDrawer->SetFaceBoundaryAspect(new Prs3d_LineAspect(Quantity_NOC_BLACK, Aspect_TOL_SOLID, 1.5));
  SetLocalTransformation(part_.place);
  SetAutoHilight(false);
}

void LensPiece::paint(const Quantity_ColorRGBA& fill, const Quantity_Color& edge, double edge_width) {
  const Handle(Prs3d_ShadingAspect)& shading = myDrawer->ShadingAspect();
  shading->SetColor(fill.GetRGB());
  shading->SetTransparency(1.0 - static_cast<double>(fill.Alpha()));
  myDrawer->FaceBoundaryAspect()->SetColor(edge);
  myDrawer->FaceBoundaryAspect()->SetWidth(edge_width);
  SynchronizeAspects();
}

void LensPiece::showInside(bool inside) {
  myDrawer->ShadingAspect()->Aspect()->SetFaceCulling(inside ? Graphic3d_TypeOfBackfacingModel_DoubleSided
                                                             : Graphic3d_TypeOfBackfacingModel_BackCulled);
  SynchronizeAspects();
}

bool LensPiece::move(const gp_Trsf& by) {
  const gp_Trsf wanted = by * part_.place;
  const gp_Trsf before = placeNow();
  bool same = true;
  for (int row = 1; row <= 3; ++row)
    for (int column = 1; column <= 4; ++column)
      same = same && wanted.Value(row, column) == before.Value(row, column);
  if (same) return false;
  SetLocalTransformation(wanted);
  return true;
}

void LensPiece::Compute(const Handle(PrsMgr_PresentationManager) &, const Handle(Prs3d_Presentation) & drawing,
                        const Standard_Integer mode) {
  if (mode != 0) return;
  const Handle(Graphic3d_Group) faces = drawing->NewGroup();
  faces->SetClosed(true);
  faces->SetGroupPrimitivesAspect(myDrawer->ShadingAspect()->Aspect());
  faces->AddPrimitiveArray(part_.mesh->facets);
  if (part_.mesh->edges.IsNull()) return;
  const Handle(Graphic3d_Group) edges = drawing->NewGroup();
  edges->SetGroupPrimitivesAspect(myDrawer->FaceBoundaryAspect()->Aspect());
  edges->AddPrimitiveArray(part_.mesh->edges);
}

void LensPiece::ComputeSelection(const Handle(SelectMgr_Selection) & selection, const Standard_Integer mode) {
  if (mode != 0) return;
  const Handle(SelectMgr_EntityOwner) owner = new SelectMgr_EntityOwner(this);
  selection->Add(new Select3D_SensitiveTriangulation(owner, part_.mesh->outside, TopLoc_Location(), true));
}

LensLines::LensLines(Handle(Graphic3d_ArrayOfPrimitives) segments, const Quantity_Color& colour, double width)
    : segments_(std::move(segments)) {
  myDrawer->SetLineAspect(new Prs3d_LineAspect(colour, Aspect_TOL_SOLID, width));
  SetInfiniteState(false);
}

void LensLines::setFacets(Handle(Graphic3d_ArrayOfTriangles) facets, const Quantity_Color& colour) {
  facets_ = std::move(facets);
  facet_colour_ = colour;
}

void LensLines::Compute(const Handle(PrsMgr_PresentationManager) &, const Handle(Prs3d_Presentation) & drawing,
                        const Standard_Integer mode) {
  if (mode != 0) return;
  if (!segments_.IsNull()) {
    const Handle(Graphic3d_Group) lines = drawing->NewGroup();
    lines->SetGroupPrimitivesAspect(myDrawer->LineAspect()->Aspect());
    lines->AddPrimitiveArray(segments_);
  }
  if (facets_.IsNull()) return;
  const Handle(Graphic3d_AspectFillArea3d) flat = new Graphic3d_AspectFillArea3d();
  flat->SetShadingModel(Graphic3d_TypeOfShadingModel_Unlit);
  flat->SetInteriorStyle(Aspect_IS_SOLID);
  flat->SetInteriorColor(facet_colour_);
  flat->SetFaceCulling(Graphic3d_TypeOfBackfacingModel_DoubleSided);
  const Handle(Graphic3d_Group) faces = drawing->NewGroup();
  faces->SetGroupPrimitivesAspect(flat);
  faces->AddPrimitiveArray(facets_);
}

}  // namespace prismwright
