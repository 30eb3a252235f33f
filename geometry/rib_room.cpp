#include "geometry/rib_room.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include <BRepAdaptor_Curve.hxx>
#include <BRepBndLib.hxx>
#include <BRep_Tool.hxx>
#include <Bnd_Box.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopLoc_Location.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS.hxx>
#include <gp_Trsf.hxx>

#include "core/frame/plate_polygons.h"
#include "geometry/plate_solid.h"
#include "geometry/rib_place.h"

namespace prismwright {
namespace {

constexpr double kNear_mm = 6;       // a prism's near end: what stands within this of the rib's inner face
constexpr double kFaceBulge_mm = 4;  // by how much a face may bulge beyond its edges over the near end
constexpr int kPointsAnEdge = 256;
constexpr double kThrough_mm = 1e-6;
constexpr double kSamePlace = 1e-6;

double hand_of(const RibPlan& rib) { return rib.side == Side::clockwise ? 1 : -1; }

bool nearer_than(const std::optional<SolidGap>& gap, double limit) { return gap && gap->gap_mm <= limit; }

double least_gap(const RibGaps& gaps) {
  double least = std::numeric_limits<double>::max();
  if (gaps.floor) least = std::min(least, gaps.floor->gap_mm);
  if (gaps.walls) least = std::min(least, gaps.walls->gap_mm);
  return least;
}

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

// A rectangle of the plate and the distance within which nothing outside it matters.
struct RibRoom::Window {
  std::optional<PlateExtent> extent;
  double reach_mm = 0;

  void take(const gp_Pnt& p) {
    if (!extent) extent = PlateExtent{{p.X(), p.Z()}, {p.X(), p.Z()}};
    extent->low = {std::min(extent->low.u, p.X()), std::min(extent->low.v, p.Z())};
    extent->high = {std::max(extent->high.u, p.X()), std::max(extent->high.v, p.Z())};
  }
  [[nodiscard]] PlateOutline rectangle(double margin) const {
    return plate_rectangle({extent->low.u - margin, extent->low.v - margin},
                           {extent->high.u + margin, extent->high.v + margin});
  }
};

RibRoom::Window RibRoom::near_end(const TopoDS_Shape& prism) const {
  Window window;
  window.reach_mm = kNear_mm;
  TopTools_IndexedMapOfShape edges;
  TopExp::MapShapes(prism, TopAbs_EDGE, edges);
  for (int i = 1; i <= edges.Extent(); ++i) {
    const TopoDS_Edge& edge = TopoDS::Edge(edges(i));
    if (BRep_Tool::Degenerated(edge)) continue;
    const BRepAdaptor_Curve curve(edge);
    for (int k = 0; k <= kPointsAnEdge; ++k) {
      const double share = static_cast<double>(k) / kPointsAnEdge;
      const gp_Pnt p =
          curve.Value(curve.FirstParameter() + share * (curve.LastParameter() - curve.FirstParameter()));
      if (hand_of(rib_) * p.Y() < rib_.thickness_mm + 2 * kNear_mm) window.take(p);
    }
  }
  return window;
}

RibRoom::Window RibRoom::whole(const TopoDS_Shape& prism, double reach_mm) const {
  Bnd_Box box;
  BRepBndLib::Add(prism, box);
  Window window;
  window.reach_mm = reach_mm;
  window.take(box.CornerMin());
  window.take(box.CornerMax());
  return window;
}

RibGaps RibRoom::gaps_to(const TopoDS_Shape& prism) const {
  const Window near = near_end(prism);
  if (near.extent) {
    RibGaps gaps = gaps_within(prism, near);
    const bool through = rib_.thickness_mm - rib_.pocket_mm <= kThrough_mm;
    if (nearer_than(gaps.walls, near.reach_mm) && (through || nearer_than(gaps.floor, near.reach_mm)))
      return gaps;
  }
  // Far from the rib: look farther until nothing that was left away can be nearer.
  double reach = 2 * kNear_mm;
  while (true) {
    const RibGaps gaps = gaps_within(prism, whole(prism, reach));
    const double least = least_gap(gaps);
    if (least <= reach || reach > 1e5) return gaps;
    reach = gaps.floor || gaps.walls ? least + kNear_mm : 4 * reach;
  }
}

RibGaps RibRoom::gaps_within(const TopoDS_Shape& prism, const Window& window) const {
  const PlateOutline rectangle = window.rectangle(window.reach_mm + kFaceBulge_mm);
  return {gap_to_layer(prism, rectangle, true), gap_to_layer(prism, rectangle, false)};
}

std::optional<SolidGap> RibRoom::gap_to_layer(const TopoDS_Shape& prism, const PlateOutline& window,
                                              bool floor) const {
  const double floor_mm = rib_.thickness_mm - rib_.pocket_mm;
  if (floor && floor_mm <= kThrough_mm) return std::nullopt;
  PlateRegion region = common_part({rib_.outline}, {window});
  if (!floor) {
    PlateRegion pockets;
    for (const Pocket& pocket : rib_.pockets) pockets.push_back(pocket.outline);
    region = first_less_second(region, pockets);
  }
  std::optional<SolidGap> least;
  for (const PlatePiece& piece : pieces_of(region)) {
    PlateShape plate{piece.outer, {}, floor ? floor_mm : rib_.thickness_mm - floor_mm, 0, rib_.side};
    plate.pocket_mm = plate.thickness_mm;
    for (const PlateOutline& hole : piece.holes) plate.pockets.emplace_back(hole.rbegin(), hole.rend());
    const TopoDS_Shape solid =
        plate_solid(plate).Moved(TopLoc_Location(along_depth(rib_, floor ? 0 : floor_mm)));
    const SolidGap gap = gap_between(prism, solid);
    least = least ? nearer(*least, gap) : gap;
  }
  return least;
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
