#include "geometry/trimmer.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include <BRepAlgoAPI_Common.hxx>
#include <BRepAlgoAPI_Cut.hxx>
#include <BRepBndLib.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakePolygon.hxx>
#include <BRepGProp.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <Bnd_Box.hxx>
#include <GProp_GProps.hxx>
#include <Standard_Failure.hxx>
#include <TopExp_Explorer.hxx>
#include <gp_Pnt.hxx>
#include <gp_Vec.hxx>

#include "core/base/angle.h"

namespace prismwright {

namespace {

/// How far helping blocks reach beyond the ring; uneven, so that no side of theirs lies on one of the ring's.
constexpr double kBeyond_mm = 17.31;
/// Share of a prism's volume up to which a piece of its own is a splinter.
constexpr double kSplinter = 2e-6;

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

/// All upright planes that bound the prism.
std::vector<HalfPlane> upright_planes(const Trim& trim) {
  const double a = radians(trim.clockwise_side_deg);
  const double b = radians(trim.anticlockwise_side_deg);
  const HalfPlane clockwise = {{-std::sin(a), std::cos(a)}, trim.set_back_mm};
  const HalfPlane anticlockwise = {{std::sin(b), -std::cos(b)}, trim.set_back_mm};
  std::vector<HalfPlane> planes = {clockwise};
  // The two sides of a panel of 180 degrees are one plane.
  if (b - a <= kPi - 1e-9) planes.push_back(anticlockwise);
  if (trim.flat_inner_mm) planes.push_back({{1, 0}, *trim.flat_inner_mm});
  return planes;
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
};

Room room_round(const TopoDS_Shape& ring) {
  Bnd_Box box;
  BRepBndLib::Add(ring, box, Standard_False);
  box.Enlarge(kBeyond_mm);
  Room room;
  box.Get(room.x0, room.y0, room.z0, room.x1, room.y1, room.z1);
  return room;
}

/// Blocks bounded by planes that are upright in the panel's frame. Seen from an axis that dips they lean: a
/// block is its foot in the plane z = z0 pushed along the upright.
class LeaningBlocks {
 public:
  explicit LeaningBlocks(double dip) : cos_(std::cos(dip)), sin_(std::sin(dip)) {}

  /// What lies between two heights and in front of every half plane.
  [[nodiscard]] PlanPolygon foot(const Room& room, double z0, double z1,
                                 const std::vector<HalfPlane>& halves) const {
    // The block drifts towards -x as it rises (for a negative dip towards +x).
    const double drift = sin_ / cos_ * (z1 - z0);
    const double x0 = room.x0 + std::min(0.0, drift);
    const double x1 = room.x1 + std::max(0.0, drift);
    PlanPolygon plan = {{x0, room.y0}, {x1, room.y0}, {x1, room.y1}, {x0, room.y1}};
    for (const HalfPlane& half : halves) plan = clipped(plan, at_level(half, z0));
    return plan;
  }

  [[nodiscard]] TopoDS_Shape block(const PlanPolygon& foot, double z0, double z1) const {
    if (foot.size() < 3 || z1 <= z0) throw Standard_Failure("the trim leaves nothing");
    BRepBuilderAPI_MakePolygon outline;
    for (const PlanPoint& p : foot) outline.Add(gp_Pnt(p.x, p.y, z0));
    outline.Close();
    const TopoDS_Face base = BRepBuilderAPI_MakeFace(outline.Wire(), Standard_True).Face();
    return BRepPrimAPI_MakePrism(base, gp_Vec(-sin_ / cos_ * (z1 - z0), 0, z1 - z0)).Shape();
  }

 private:
  [[nodiscard]] HalfPlane at_level(const HalfPlane& half, double z) const {
    return {{half.inward.x * cos_, half.inward.y}, half.distance_mm - half.inward.x * sin_ * z};
  }

  double cos_;
  double sin_;
};

void cut_level(Room& room, const Trim& trim) {
  if (trim.half == Half::upper) room.z0 = trim.half_gap_mm;
  if (trim.half == Half::lower) room.z1 = -trim.half_gap_mm;
}

TopoDS_Shape common_with_wedge(const TopoDS_Shape& ring, const Trim& trim, const LeaningBlocks& blocks) {
  Room room = room_round(ring);
  cut_level(room, trim);
  const PlanPolygon foot = blocks.foot(room, room.z0, room.z1, upright_planes(trim));
  BRepAlgoAPI_Common common(ring, blocks.block(foot, room.z0, room.z1));
  if (!common.IsDone() || common.HasErrors()) throw Standard_Failure("the ring could not be cut");
  return common.Shape();
}

TopoDS_Shape less(const TopoDS_Shape& ring, const TopoDS_Shape& block) {
  BRepAlgoAPI_Cut cut(ring, block);
  if (!cut.IsDone() || cut.HasErrors()) throw Standard_Failure("the ring could not be cut");
  return cut.Shape();
}

TopoDS_Shape cut_plane_by_plane(const TopoDS_Shape& ring, const Trim& trim, const LeaningBlocks& blocks) {
  const Room room = room_round(ring);
  TopoDS_Shape left = ring;
  const auto cut_away = [&](const PlanPolygon& foot, double z0, double z1) {
    if (foot.size() >= 3 && z0 < z1) left = less(left, blocks.block(foot, z0, z1));
  };
  for (const HalfPlane& half : upright_planes(trim)) {
    const HalfPlane behind = {{-half.inward.x, -half.inward.y}, -half.distance_mm};
    cut_away(blocks.foot(room, room.z0, room.z1, {behind}), room.z0, room.z1);
  }
  const double gap = trim.half_gap_mm;
  if (trim.half == Half::upper) cut_away(blocks.foot(room, room.z0, gap, {}), room.z0, gap);
  if (trim.half == Half::lower) cut_away(blocks.foot(room, -gap, room.z1, {}), -gap, room.z1);
  return left;
}

/// Leaning side planes may meet a half's inner edge on their way to the level plane and leave splinters there,
/// far smaller than what the solid's volume is held to.
TopoDS_Shape without_splinters(const TopoDS_Shape& cut) {
  TopoDS_Shape largest;
  double most = 0;
  double all = 0;
  for (TopExp_Explorer it(cut, TopAbs_SOLID); it.More(); it.Next()) {
    GProp_GProps sums;
    BRepGProp::VolumeProperties(it.Current(), sums);
    all += sums.Mass();
    if (sums.Mass() <= most) continue;
    most = sums.Mass();
    largest = it.Current();
  }
  return all > most && all - most <= kSplinter * most ? largest : cut;
}

bool is_in_pieces(const TopoDS_Shape& cut) {
  int solids = 0;
  for (TopExp_Explorer it(cut, TopAbs_SOLID); it.More(); it.Next()) ++solids;
  return solids > 1;
}

}  // namespace

TopoDS_Shape trimmed(const TopoDS_Shape& ring, const Trim& trim, double dip, CuttingWay way) {
  const LeaningBlocks blocks(dip);
  const TopoDS_Shape cut =
      way == CuttingWay::wedge ? common_with_wedge(ring, trim, blocks) : cut_plane_by_plane(ring, trim, blocks);
  return dip != 0 && is_in_pieces(cut) ? without_splinters(cut) : cut;
}

}  // namespace prismwright
