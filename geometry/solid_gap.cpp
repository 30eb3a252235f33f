#include "geometry/solid_gap.h"

#include <cmath>

#include <BRepAdaptor_Curve.hxx>
#include <BRepAlgoAPI_Common.hxx>
#include <BRepBndLib.hxx>
#include <BRepBuilderAPI_Copy.hxx>
#include <BRepClass3d_SolidClassifier.hxx>
#include <BRepExtrema_DistShapeShape.hxx>
#include <BRepGProp.hxx>
#include <BRepPrimAPI_MakeBox.hxx>
#include <BRep_Tool.hxx>
#include <Bnd_Box.hxx>
#include <GProp_GProps.hxx>
#include <Standard_Failure.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <gp_Vec.hxx>

namespace prismwright {

namespace {

constexpr double kNear_mm = 1;

TopoDS_Shape part_in(const TopoDS_Shape& solid, const TopoDS_Shape& cube) {
  BRepAlgoAPI_Common common(BRepBuilderAPI_Copy(solid).Shape(), BRepBuilderAPI_Copy(cube).Shape());
  if (!common.IsDone()) throw Standard_Failure("a piece of a solid could not be cut out");
  return common.Shape();
}

constexpr double kDeep_mm = 0.01;  // what lies shallower may be a mistake of the classifier

constexpr int kEdgePlaces = 24;  // on every edge
constexpr int kMostTries = 24;   // of cubes that hold nothing in common

/// The volume about the first place of the edges that lies inside the other solid.
double overlap_at_edges(const TopoDS_Shape& edged, const TopoDS_Shape& solid) {
  Bnd_Box room;
  BRepBndLib::Add(solid, room);
  BRepClass3d_SolidClassifier inside(solid);
  int tries = 0;
  for (TopExp_Explorer edge(edged, TopAbs_EDGE); edge.More(); edge.Next()) {
    if (BRep_Tool::Degenerated(TopoDS::Edge(edge.Current()))) continue;
    const BRepAdaptor_Curve curve(TopoDS::Edge(edge.Current()));
    const double step = (curve.LastParameter() - curve.FirstParameter()) / kEdgePlaces;
    for (int i = 0; i < kEdgePlaces; ++i) {
      const gp_Pnt place = curve.Value(curve.FirstParameter() + (i + 0.5) * step);
      if (room.IsOut(place)) continue;
      inside.Perform(place, kDeep_mm);
      if (inside.State() != TopAbs_IN) continue;
      const double overlap = common_volume_near_mm3(edged, solid, place);
      if (overlap > 0 || ++tries == kMostTries) return overlap;
    }
  }
  return 0;
}

}  // namespace

double shallow_overlap_mm3(const TopoDS_Shape& first, const TopoDS_Shape& second) {
  const double overlap = overlap_at_edges(first, second);
  return overlap > 0 ? overlap : overlap_at_edges(second, first);
}

double common_volume_near_mm3(const TopoDS_Shape& first, const TopoDS_Shape& second, const gp_Pnt& place) {
  const gp_Vec half(kNear_mm, kNear_mm, kNear_mm);
  const TopoDS_Shape cube = BRepPrimAPI_MakeBox(place.Translated(-half), place.Translated(half)).Shape();
  return common_volume_mm3(part_in(first, cube), part_in(second, cube));
}

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
