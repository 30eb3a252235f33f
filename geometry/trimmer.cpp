#include "geometry/trimmer.h"

#include <array>
#include <cmath>
#include <vector>

#include <BRepAlgoAPI_Common.hxx>
#include <BRepAlgoAPI_Cut.hxx>
#include <BRepBndLib.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakePolygon.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <Bnd_Box.hxx>
#include <Standard_Failure.hxx>
#include <gp_Pnt.hxx>
#include <gp_Vec.hxx>

#include "core/base/angle.h"

namespace prismwright {

namespace {

/// How far helping blocks reach beyond the ring; uneven, so that no side of theirs lies on one of the ring's.
constexpr double kBeyond_mm = 17.31;

struct PlanPoint {
  double x = 0;
  double y = 0;
};

/// What lies at `distance_mm` or more along a level unit vector.
struct HalfPlane {
  PlanPoint inward;
  double distance_mm = 0;

  [[nodiscard]] double beyond(PlanPoint p) const { return p.x * inward.x + p.y * inward.y - distance_mm; }
};

std::vector<HalfPlane> side_planes(const Trim& trim) {
  const double a = radians(trim.clockwise_side_deg);
  const double b = radians(trim.anticlockwise_side_deg);
  const HalfPlane clockwise = {{-std::sin(a), std::cos(a)}, trim.set_back_mm};
  const HalfPlane anticlockwise = {{std::sin(b), -std::cos(b)}, trim.set_back_mm};
  // The two sides of a panel of 180 degrees are one plane.
  if (b - a > kPi - 1e-9) return {clockwise};
  return {clockwise, anticlockwise};
}

using PlanPolygon = std::vector<PlanPoint>;

PlanPolygon clipped(const PlanPolygon& polygon, const HalfPlane& half) {
  PlanPolygon kept;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const PlanPoint p = polygon[i];
    const PlanPoint q = polygon[(i + 1) % polygon.size()];
    const double at_p = half.beyond(p);
    const double at_q = half.beyond(q);
    if (at_p >= 0) kept.push_back(p);
    if ((at_p >= 0) == (at_q >= 0)) continue;
    const double share = at_p / (at_p - at_q);
    kept.push_back({p.x + share * (q.x - p.x), p.y + share * (q.y - p.y)});
  }
  return kept;
}

/// A block that holds the ring with room to spare.
struct Room {
  double x0 = 0, y0 = 0, z0 = 0, x1 = 0, y1 = 0, z1 = 0;

  [[nodiscard]] PlanPolygon plan() const { return {{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}; }
};

Room room_round(const TopoDS_Shape& ring) {
  Bnd_Box box;
  BRepBndLib::Add(ring, box, Standard_False);
  box.Enlarge(kBeyond_mm);
  Room room;
  box.Get(room.x0, room.y0, room.z0, room.x1, room.y1, room.z1);
  return room;
}

TopoDS_Shape upright_block(const PlanPolygon& plan, double z0, double z1) {
  if (plan.size() < 3 || z1 <= z0) throw Standard_Failure("the trim leaves nothing");
  BRepBuilderAPI_MakePolygon outline;
  for (const PlanPoint& p : plan) outline.Add(gp_Pnt(p.x, p.y, z0));
  outline.Close();
  const TopoDS_Face base = BRepBuilderAPI_MakeFace(outline.Wire(), Standard_True).Face();
  return BRepPrimAPI_MakePrism(base, gp_Vec(0, 0, z1 - z0)).Shape();
}

void cut_level(Room& room, const Trim& trim) {
  if (trim.half == Half::upper) room.z0 = trim.half_gap_mm;
  if (trim.half == Half::lower) room.z1 = -trim.half_gap_mm;
}

TopoDS_Shape common_with_wedge(const TopoDS_Shape& ring, const Trim& trim) {
  Room room = room_round(ring);
  PlanPolygon plan = room.plan();
  for (const HalfPlane& half : side_planes(trim)) plan = clipped(plan, half);
  cut_level(room, trim);
  BRepAlgoAPI_Common common(ring, upright_block(plan, room.z0, room.z1));
  if (!common.IsDone() || common.HasErrors()) throw Standard_Failure("the ring could not be cut");
  return common.Shape();
}

TopoDS_Shape less(const TopoDS_Shape& ring, const TopoDS_Shape& block) {
  BRepAlgoAPI_Cut cut(ring, block);
  if (!cut.IsDone() || cut.HasErrors()) throw Standard_Failure("the ring could not be cut");
  return cut.Shape();
}

TopoDS_Shape cut_plane_by_plane(const TopoDS_Shape& ring, const Trim& trim) {
  const Room room = room_round(ring);
  TopoDS_Shape left = ring;
  for (const HalfPlane& half : side_planes(trim)) {
    const HalfPlane behind = {{-half.inward.x, -half.inward.y}, -half.distance_mm};
    const PlanPolygon plan = clipped(room.plan(), behind);
    if (plan.size() >= 3) left = less(left, upright_block(plan, room.z0, room.z1));
  }
  if (trim.half == Half::upper && room.z0 < trim.half_gap_mm) {
    left = less(left, upright_block(room.plan(), room.z0, trim.half_gap_mm));
  }
  if (trim.half == Half::lower && room.z1 > -trim.half_gap_mm) {
    left = less(left, upright_block(room.plan(), -trim.half_gap_mm, room.z1));
  }
  return left;
}

}  // namespace

TopoDS_Shape trimmed(const TopoDS_Shape& ring, const Trim& trim, CuttingWay way) {
  return way == CuttingWay::wedge ? common_with_wedge(ring, trim) : cut_plane_by_plane(ring, trim);
}

}  // namespace prismwright
