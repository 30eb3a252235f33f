#include "geometry/stretched_shape.h"

#include <BRepBuilderAPI_GTransform.hxx>
#include <BRepBuilderAPI_Transform.hxx>
#include <gp_GTrsf.hxx>
#include <gp_Mat.hxx>
#include <gp_Trsf.hxx>

namespace prismwright {

namespace {

gp_Mat matrix_of(const MasterStretch& stretch) {
  const SpaceFrame frame = stretch.frame();
  gp_Mat turn(frame.first.x, frame.second.x, frame.third.x, frame.first.y, frame.second.y, frame.third.y,
              frame.first.z, frame.second.z, frame.third.z);
  gp_Mat own;
  own.SetDiagonal(stretch.depth, stretch.length, stretch.height);
  return turn * own * turn.Transposed();
}

}  // namespace

TopoDS_Shape stretched_shape(const TopoDS_Shape& casting, const MasterStretch& stretch) {
  if (stretch.is_even()) {
    if (stretch.depth == 1) return casting;
    gp_Trsf scale;
    scale.SetScale(gp_Pnt(0, 0, 0), stretch.depth);
    return BRepBuilderAPI_Transform(casting, scale, Standard_True).Shape();
  }
  gp_GTrsf uneven;
  uneven.SetVectorialPart(matrix_of(stretch));
  return BRepBuilderAPI_GTransform(casting, uneven, Standard_True).Shape();
}

gp_Pnt shrunk(const gp_Pnt& on_master, const MasterStretch& stretch) {
  const SpacePoint p = stretch.of_casting({on_master.X(), on_master.Y(), on_master.Z()});
  return {p.x, p.y, p.z};
}

}  // namespace prismwright
