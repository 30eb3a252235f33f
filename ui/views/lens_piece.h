#pragma once

#include <memory>

#include <AIS_InteractiveObject.hxx>
#include <Quantity_ColorRGBA.hxx>

#include "ui/views/lens_meshes.h"

namespace prismwright {

/// One part of the lens in the 3D scene: shared facets and edges, colours of its own.
class LensPiece : public AIS_InteractiveObject {
  DEFINE_STANDARD_RTTI_INLINE(LensPiece, AIS_InteractiveObject)

 public:
  explicit LensPiece(const LensPart& part);

  [[nodiscard]] const LensPart& part() const { return part_; }
  /// Fill (with its opacity) and edge colour; nothing is recomputed.
  void paint(const Quantity_ColorRGBA& fill, const Quantity_Color& edge, double edge_width);
  /// Draws the far faces too, as is needed where a cut opens the part.
  void showInside(bool inside);
  /// Moves the part away from its place, lens frame; answers whether it now stands elsewhere.
  bool move(const gp_Trsf& by);
  [[nodiscard]] gp_Trsf placeNow() const { return Transformation(); }

 protected:
  void Compute(const Handle(PrsMgr_PresentationManager) & manager, const Handle(Prs3d_Presentation) & drawing,
               const Standard_Integer mode) override;
  void ComputeSelection(const Handle(SelectMgr_Selection) & selection, const Standard_Integer mode) override;

 private:
  LensPart part_;
};

/// Lines that stand in the scene but are never picked: an outline, the rose, a gap, a cut.
class LensLines : public AIS_InteractiveObject {
  DEFINE_STANDARD_RTTI_INLINE(LensLines, AIS_InteractiveObject)

 public:
  LensLines(Handle(Graphic3d_ArrayOfPrimitives) segments, const Quantity_Color& colour, double width);
  /// Facets too, in the same colour.
  void setFacets(Handle(Graphic3d_ArrayOfTriangles) facets, const Quantity_Color& colour);

 protected:
  void Compute(const Handle(PrsMgr_PresentationManager) & manager, const Handle(Prs3d_Presentation) & drawing,
               const Standard_Integer mode) override;
  void ComputeSelection(const Handle(SelectMgr_Selection) &, const Standard_Integer) override {}

 private:
  Handle(Graphic3d_ArrayOfPrimitives) segments_;
  Handle(Graphic3d_ArrayOfTriangles) facets_;
  Quantity_Color facet_colour_;
};

}  // namespace prismwright
