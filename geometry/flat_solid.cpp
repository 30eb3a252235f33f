#include "geometry/flat_solid.h"

#include <algorithm>
#include <cmath>

#include <BRepAlgoAPI_Cut.hxx>
#include <BRepPrimAPI_MakeCone.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <Standard_Failure.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_ListOfShape.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Solid.hxx>
#include <gp_Ax2.hxx>

#include "core/base/angle.h"
#include "geometry/flat_walls.h"
#include "geometry/hole_site.h"

namespace prismwright {
namespace {

constexpr double kThrough_mm = 1e-6;
constexpr double kBeyond_mm = 1;

bool goes_through(const FlatPart& part, const PlatePocket& pocket) {
  return part.thickness_mm - pocket.depth_mm <= kThrough_mm;
}

// A plate without cuts, face by face: the loops of each flat face are gathered, then closed.
class PlateMaker {
 public:
  explicit PlateMaker(const FlatPart& part) : part_(part) {}

  TopoDS_Solid make() {
    FlatWalls::Loops back;
    FlatWalls::Loops front;
    const FlatWalls::Tube rim = walls_.tube(part_.outline, 0, part_.thickness_mm, FlatWalls::Brass::inside);
    for (const PlateChain& opening : part_.openings) pierce(opening, back, front);
    const std::vector<FlatWalls::Loops> floors = sink_holes(back, front);
    for (std::size_t i = 0; i < part_.pockets.size(); ++i) sink_pocket(i, floors[i], back, front);
    walls_.add_flat(rim.low, back, 0, FlatWalls::Looks::back);
    walls_.add_flat(rim.high, front, part_.thickness_mm, FlatWalls::Looks::front);
    return walls_.solid();
  }

 private:
  void pierce(const PlateChain& chain, FlatWalls::Loops& back, FlatWalls::Loops& front) {
    const FlatWalls::Tube tube = walls_.tube(chain, 0, part_.thickness_mm, FlatWalls::Brass::outside);
    back.push_back(tube.low);
    front.push_back(tube.high);
  }

  // Loops that the holes leave in the floor of each pocket.
  std::vector<FlatWalls::Loops> sink_holes(FlatWalls::Loops& back, FlatWalls::Loops& front) {
    std::vector<FlatWalls::Loops> floors(part_.pockets.size());
    for (const PlateHole& hole : part_.holes) {
      const HoleSite site = site_of(part_, hole);
      const FlatWalls::Tube tube = walls_.hole(hole, site.top_mm);
      back.push_back(tube.low);
      (site.pocket ? floors[*site.pocket] : front).push_back(tube.high);
    }
    return floors;
  }

  void sink_pocket(std::size_t i, const FlatWalls::Loops& holes, FlatWalls::Loops& back,
                   FlatWalls::Loops& front) {
    const PlatePocket& pocket = part_.pockets[i];
    if (goes_through(part_, pocket)) return pierce(pocket.outline, back, front);
    const double floor = part_.thickness_mm - pocket.depth_mm;
    const FlatWalls::Tube tube =
        walls_.tube(pocket.outline, floor, part_.thickness_mm, FlatWalls::Brass::outside);
    front.push_back(tube.high);
    walls_.add_flat(tube.low, holes, floor, FlatWalls::Looks::front);
  }

  const FlatPart& part_;
  FlatWalls walls_;
};

TopoDS_Shape cut(const TopoDS_Shape& solid, const TopTools_ListOfShape& tools) {
  if (tools.IsEmpty()) return solid;
  TopTools_ListOfShape arguments;
  arguments.Append(solid);
  BRepAlgoAPI_Cut cutting;
  cutting.SetArguments(arguments);
  cutting.SetTools(tools);
  cutting.Build();
  if (cutting.HasErrors()) throw Standard_Failure("its bores could not be cut");
  TopExp_Explorer solids(cutting.Shape(), TopAbs_SOLID);
  if (!solids.More()) throw Standard_Failure("its bores leave nothing of it");
  const TopoDS_Shape left = solids.Current();
  solids.Next();
  if (solids.More()) throw Standard_Failure("its bores cut it in two");
  return left;
}

gp_Ax2 upright(PlatePoint centre, double z) { return {gp_Pnt(centre.u, centre.v, z), gp_Dir(0, 0, 1)}; }

void add_hole_tools(const PlateHole& hole, double thickness_mm, TopTools_ListOfShape& tools) {
  const double radius = hole.diameter_mm / 2;
  const gp_Ax2 under = upright(hole.centre, -kBeyond_mm);
  tools.Append(BRepPrimAPI_MakeCylinder(under, radius, thickness_mm + 2 * kBeyond_mm).Shape());
  const double deep = (hole.sink_diameter_mm - hole.diameter_mm) / 2;
  if (deep <= 0) return;
  const gp_Ax2 back(gp_Pnt(hole.centre.u, hole.centre.v, 0), gp_Dir(0, 0, 1));
  const gp_Ax2 front(gp_Pnt(hole.centre.u, hole.centre.v, thickness_mm), gp_Dir(0, 0, -1));
  tools.Append(
      BRepPrimAPI_MakeCone(hole.sunk_in_back ? back : front, hole.sink_diameter_mm / 2, radius, deep).Shape());
}

double disc_mm2(double diameter_mm) { return kPi * diameter_mm * diameter_mm / 4; }

double hole_volume_mm3(const PlateHole& hole, double top_mm) {
  const double deep = sink_depth_mm(hole, top_mm);
  const double wide = std::max(hole.sink_diameter_mm, hole.diameter_mm);
  const double narrow = wide - 2 * deep;
  const double cone = kPi / 12 * deep * (wide * wide + wide * narrow + narrow * narrow);
  return disc_mm2(hole.diameter_mm) * (top_mm - deep) + cone;
}

}  // namespace

FlatPart without_cuts(const FlatPart& part) {
  FlatPart plain = part;
  plain.bores.clear();
  plain.holes.clear();
  for (const PlateHole& hole : part.holes) {
    if (site_of(part, hole).clear) plain.holes.push_back(hole);
  }
  return plain;
}

TopoDS_Shape bored(const TopoDS_Shape& solid, const std::vector<PlateBore>& bores) {
  TopTools_ListOfShape tools;
  for (const PlateBore& bore : bores) {
    const SpacePoint outside = bore.from - bore.diameter_mm * bore.along;
    const gp_Ax2 axis(gp_Pnt(outside.x, outside.y, outside.z),
                      gp_Dir(bore.along.x, bore.along.y, bore.along.z));
    tools.Append(
        BRepPrimAPI_MakeCylinder(axis, bore.diameter_mm / 2, bore.depth_mm + bore.diameter_mm).Shape());
  }
  return cut(solid, tools);
}

TopoDS_Shape flat_solid(const FlatPart& part) {
  const FlatPart plain = without_cuts(part);
  const TopoDS_Shape solid = PlateMaker(plain).make();
  TopTools_ListOfShape tools;
  for (const PlateHole& hole : part.holes) {
    if (!site_of(part, hole).clear) add_hole_tools(hole, part.thickness_mm, tools);
  }
  return bored(cut(solid, tools), part.bores);
}

double flat_volume_mm3(const FlatPart& part) {
  double volume = signed_area_mm2(part.outline) * part.thickness_mm;
  for (const PlateChain& opening : part.openings) volume -= signed_area_mm2(opening) * part.thickness_mm;
  for (const PlatePocket& pocket : part.pockets) {
    volume -= signed_area_mm2(pocket.outline) * std::min(pocket.depth_mm, part.thickness_mm);
  }
  for (const PlateHole& hole : part.holes) volume -= hole_volume_mm3(hole, site_of(part, hole).top_mm);
  for (const PlateBore& bore : part.bores) volume -= disc_mm2(bore.diameter_mm) * bore.depth_mm;
  return volume;
}

}  // namespace prismwright
