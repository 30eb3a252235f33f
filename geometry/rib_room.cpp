#include "geometry/rib_room.h"

#include <algorithm>
#include <cmath>

#include <BRepBndLib.hxx>
#include <BRep_Tool.hxx>
#include <Bnd_Box.hxx>
#include <Standard_Failure.hxx>
#include <TopExp.hxx>
#include <TopLoc_Location.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS.hxx>
#include <gp_Trsf.hxx>

#include "core/frame/plate_polygons.h"
#include "geometry/nearest_place.h"
#include "geometry/plate_solid.h"
#include "geometry/rib_place.h"

namespace prismwright {
namespace {

// The floor is flat under a flat end; walls are polygons with steps of a millimetre and more.
constexpr double kFloorCell_mm = 2;
constexpr double kWallCell_mm = 0.5;
constexpr double kRoundBox_mm = 1;
constexpr double kThrough_mm = 1e-6;
constexpr double kSamePlace = 1e-6;

double hand_of(const RibPlan& rib) { return rib.side == Side::clockwise ? 1 : -1; }

gp_Trsf along_depth(const RibPlan& rib, double depth) {
  gp_Trsf move;
  move.SetTranslation(gp_Vec(0, hand_of(rib) * depth, 0));
  return move;
}

// What the corners of a plate add up to; depth is told apart by its own sum.
struct CornerSum {
  double u = 0;
  double v = 0;
  double depth = 0;
  int corners = 0;

  void add(double at_u, double at_v, double at_depth) {
    u += at_u;
    v += at_v;
    depth += at_depth;
    ++corners;
  }
  [[nodiscard]] bool equals(const CornerSum& other) const {
    return corners == other.corners && std::abs(u - other.u) < kSamePlace * corners &&
           std::abs(v - other.v) < kSamePlace * corners && std::abs(depth - other.depth) < kSamePlace * corners;
  }
};

CornerSum planned_corners(const RibPlan& rib) {
  CornerSum sum;
  const auto add = [&](const PlateOutline& outline, double outer_depth) {
    for (const PlatePoint p : outline) {
      sum.add(p.u, p.v, outer_depth);
      sum.add(p.u, p.v, rib.thickness_mm);
    }
  };
  add(rib.outline, 0);
  for (const Pocket& pocket : rib.pockets) add(pocket.outline, std::max(0.0, rib.thickness_mm - rib.pocket_mm));
  return sum;
}

}  // namespace

RibRoom::RibRoom(const RibPlan& rib) : rib_(rib) {
  const double floor_mm = rib.thickness_mm - rib.pocket_mm;
  PlateRegion pockets;
  for (const Pocket& pocket : rib.pockets) pockets.push_back(pocket.outline);
  const bool through = floor_mm <= kThrough_mm;
  if (!through) floor_ = layer({rib.outline}, 0, floor_mm);
  walls_ = layer(first_less_second({rib.outline}, pockets), through ? 0 : floor_mm, rib.thickness_mm);
}

RibRoom::Layer RibRoom::layer(PlateRegion region, double from_mm, double to_mm) const {
  LayerField field(region, from_mm, to_mm, rib_.side);
  return {from_mm, to_mm, std::move(region), std::move(field)};
}

RibGaps RibRoom::gaps_to(const TopoDS_Shape& prism) const {
  RibGaps gaps;
  if (floor_) gaps.floor = gap_to(prism, *floor_);
  if (walls_) gaps.walls = gap_to(prism, *walls_);
  return gaps;
}

SolidGap RibRoom::gap_to(const TopoDS_Shape& prism, const Layer& layer) const {
  const auto nearest = nearest_place(prism, layer.field, layer.from_mm == 0 ? kFloorCell_mm : kWallCell_mm);
  if (!nearest) throw Standard_Failure("a prism without faces");
  SolidGap gap{nearest->distance_mm, 0, nearest->on_solid, nearest->on_part};
  if (gap.gap_mm < kTouching_mm) {
    gap.gap_mm = 0;
    gap.overlap_mm3 = overlap_mm3(prism, layer);
  }
  return gap;
}

// Only the part of the layer that the prism's box covers can touch it or overlap.
double RibRoom::overlap_mm3(const TopoDS_Shape& prism, const Layer& layer) const {
  Bnd_Box box;
  BRepBndLib::Add(prism, box);
  box.Enlarge(kRoundBox_mm);
  const gp_Pnt low = box.CornerMin();
  const gp_Pnt high = box.CornerMax();
  const PlateRegion near =
      common_part(layer.region, {plate_rectangle({low.X(), low.Z()}, {high.X(), high.Z()})});
  double overlap = 0;
  for (const PlatePiece& piece : pieces_of(near)) {
    PlateShape plate{piece.outer, {}, layer.to_mm - layer.from_mm, layer.to_mm - layer.from_mm, rib_.side};
    for (const PlateOutline& hole : piece.holes) plate.pockets.emplace_back(hole.rbegin(), hole.rend());
    const TopoDS_Shape solid = plate_solid(plate).Moved(TopLoc_Location(along_depth(rib_, layer.from_mm)));
    overlap += common_volume_mm3(prism, solid);
  }
  return overlap;
}

bool stands_as_planned(const TopoDS_Shape& shape, const RibPlan& rib) {
  TopTools_IndexedMapOfShape corners;
  TopExp::MapShapes(shape, TopAbs_VERTEX, corners);
  const gp_Trsf back = rib_turn(rib).Inverted();
  CornerSum sum;
  for (int i = 1; i <= corners.Extent(); ++i) {
    const gp_Pnt p = BRep_Tool::Pnt(TopoDS::Vertex(corners(i))).Transformed(back);
    sum.add(p.X(), p.Z(), hand_of(rib) * p.Y());
  }
  return sum.equals(planned_corners(rib));
}

}  // namespace prismwright
