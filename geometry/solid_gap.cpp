#include "geometry/solid_gap.h"

#include <cmath>

#include <BRepAlgoAPI_Common.hxx>
#include <BRepBuilderAPI_Copy.hxx>
#include <BRepExtrema_DistShapeShape.hxx>
#include <BRepGProp.hxx>
#include <GProp_GProps.hxx>
#include <Standard_Failure.hxx>

namespace prismwright {
// The boolean works on copies: it may widen tolerances of what it is given, which other threads share.
double common_volume_mm3(const TopoDS_Shape& first, const TopoDS_Shape& second) {
  BRepAlgoAPI_Common common(BRepBuilderAPI_Copy(first).Shape(), BRepBuilderAPI_Copy(second).Shape());
  if (!common.IsDone()) throw Standard_Failure("the common part of two solids could not be made");
  GProp_GProps props;
  BRepGProp::VolumeProperties(common.Shape(), props);
  return std::abs(props.Mass());
}

SolidGap gap_between(const TopoDS_Shape& first, const TopoDS_Shape& second) {
  const BRepExtrema_DistShapeShape distance(first, second, Extrema_ExtFlag_MIN);
  if (!distance.IsDone() || distance.NbSolution() < 1) {
    throw Standard_Failure("the distance of two solids could not be found");
  }
  SolidGap gap{distance.Value(), 0, distance.PointOnShape1(1), distance.PointOnShape2(1)};
  if (gap.gap_mm < kTouching_mm) {
    gap.gap_mm = 0;
    gap.overlap_mm3 = common_volume_mm3(first, second);
  }
  return gap;
}

}  // namespace prismwright
