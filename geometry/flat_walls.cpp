#include "geometry/flat_walls.h"

#include <algorithm>
#include <cmath>

#include <BRepAdaptor_Surface.hxx>
#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepBuilderAPI_MakePolygon.hxx>
#include <BRepBuilderAPI_MakeVertex.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <BRepPrimAPI_MakeRevol.hxx>
#include <BRepTools_WireExplorer.hxx>
#include <Geom_Plane.hxx>
#include <Precision.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Vertex.hxx>
#include <gp_Ax1.hxx>
#include <gp_Ax2.hxx>
#include <gp_Circ.hxx>

#include "core/base/angle.h"
#include "geometry/hole_site.h"

namespace prismwright {
namespace {

constexpr double kShortest_mm = 1e-6;
constexpr double kSameRadius_mm = 1e-7;

bool has_length(const PlateStep& step) {
  return std::hypot(step.to.u - step.from.u, step.to.v - step.from.v) > kShortest_mm;
}

// An arc's centre from its ends and turn, so that both ends lie on the circle to the last digit.
PlatePoint exact_centre(const PlateStep& arc) {
  const double du = arc.to.u - arc.from.u;
  const double dv = arc.to.v - arc.from.v;
  const double lift = 0.5 / std::tan(arc.turn / 2);
  return {(arc.from.u + arc.to.u) / 2 - lift * dv, (arc.from.v + arc.to.v) / 2 + lift * du};
}

bool is_circle(const PlateChain& chain) {
  const auto half_turn = [](const PlateStep& s) { return std::abs(s.turn - kPi) < 1e-9; };
  return chain.size() == 2 && half_turn(chain[0]) && half_turn(chain[1]) &&
         std::abs(chain[0].radius_mm - chain[1].radius_mm) < kSameRadius_mm;
}

gp_Circ circle_at(PlatePoint centre, double z, double radius, bool anticlockwise) {
  return {gp_Ax2(gp_Pnt(centre.u, centre.v, z), gp_Dir(0, 0, anticlockwise ? 1 : -1)), radius};
}

TopoDS_Edge made(const BRepBuilderAPI_MakeEdge& making) {
  if (!making.IsDone()) throw Standard_Failure("an edge of its outline could not be made");
  return const_cast<BRepBuilderAPI_MakeEdge&>(making).Edge();
}

TopoDS_Edge edge_of(const PlateStep& step, double z, const TopoDS_Vertex& from, const TopoDS_Vertex& to) {
  if (step.straight()) return made(BRepBuilderAPI_MakeEdge(from, to));
  const PlatePoint centre = exact_centre(step);
  const double radius = std::hypot(step.from.u - centre.u, step.from.v - centre.v);
  return made(BRepBuilderAPI_MakeEdge(circle_at(centre, z, radius, step.turn > 0), from, to));
}

// To the right of the walk at a place of the step's wall: out of the brass that lies on its left.
gp_Vec right_of(const PlateStep& step, const gp_Pnt& at) {
  if (step.straight()) return {step.to.v - step.from.v, step.from.u - step.to.u, 0};
  const PlatePoint centre = exact_centre(step);
  const double way = step.turn > 0 ? 1 : -1;
  return {way * (at.X() - centre.u), way * (at.Y() - centre.v), 0};
}

// The steps that have length, and their edges at one depth.
struct Outline {
  std::vector<PlateStep> steps;
  FlatWalls::Loop edges;
};

Outline round_outline(const PlateChain& chain, double z) {
  const PlatePoint centre = exact_centre(chain[0]);
  const double radius = std::hypot(chain[0].from.u - centre.u, chain[0].from.v - centre.v);
  return {{chain[0]}, {made(BRepBuilderAPI_MakeEdge(circle_at(centre, z, radius, true)))}};
}

Outline outline_at(const PlateChain& chain, double z) {
  if (is_circle(chain)) return round_outline(chain, z);
  Outline outline;
  std::copy_if(chain.begin(), chain.end(), std::back_inserter(outline.steps), has_length);
  std::vector<TopoDS_Vertex> corners;
  for (const PlateStep& step : outline.steps) {
    corners.push_back(BRepBuilderAPI_MakeVertex(gp_Pnt(step.from.u, step.from.v, z)).Vertex());
  }
  for (std::size_t i = 0; i < corners.size(); ++i) {
    outline.edges.push_back(edge_of(outline.steps[i], z, corners[i], corners[(i + 1) % corners.size()]));
  }
  return outline;
}

TopoDS_Wire wire_of(const FlatWalls::Loop& loop, bool as_drawn) {
  BRep_Builder builder;
  TopoDS_Wire wire;
  builder.MakeWire(wire);
  for (std::size_t i = 0; i < loop.size(); ++i) {
    const TopoDS_Edge& edge = loop[as_drawn ? i : loop.size() - 1 - i];
    builder.Add(wire, as_drawn ? edge : TopoDS::Edge(edge.Reversed()));
  }
  wire.Closed(true);
  return wire;
}

TopoDS_Edge forward(const TopoDS_Shape& edge) { return TopoDS::Edge(edge.Oriented(TopAbs_FORWARD)); }

}  // namespace

void FlatWalls::add_wall(TopoDS_Face face, const std::function<gp_Vec(const gp_Pnt&)>& outward) {
  face.Orientation(TopAbs_FORWARD);
  const BRepAdaptor_Surface surface(face);
  gp_Pnt at;
  gp_Vec along_u;
  gp_Vec along_v;
  surface.D1((surface.FirstUParameter() + surface.LastUParameter()) / 2,
             (surface.FirstVParameter() + surface.LastVParameter()) / 2, at, along_u, along_v);
  if (along_u.Crossed(along_v).Dot(outward(at)) < 0) face.Reverse();
  builder_.Add(shell_, face);
}

FlatWalls::Tube FlatWalls::tube(const PlateChain& chain, double from_mm, double to_mm, Brass brass) {
  const Outline outline = outline_at(chain, from_mm);
  BRepPrimAPI_MakePrism sweep(wire_of(outline.edges, true), gp_Vec(0, 0, to_mm - from_mm));
  const double way = brass == Brass::inside ? 1 : -1;
  Tube rims;
  for (std::size_t i = 0; i < outline.edges.size(); ++i) {
    const TopoDS_Edge& edge = outline.edges[i];
    const PlateStep& step = outline.steps[i];
    rims.low.push_back(forward(sweep.FirstShape(edge)));
    rims.high.push_back(forward(sweep.LastShape(edge)));
    add_wall(TopoDS::Face(sweep.Generated(edge).First()),
             [&](const gp_Pnt& at) { return way * right_of(step, at); });
  }
  return rims;
}

FlatWalls::Tube FlatWalls::hole(const PlateHole& hole, double top_mm) {
  const double deep = sink_depth_mm(hole, top_mm);
  const double radius = hole.diameter_mm / 2;
  const double wide = std::max(radius, hole.sink_diameter_mm / 2);
  std::vector<gp_Pnt> side;
  const auto add = [&](double away, double z) { side.emplace_back(hole.centre.u + away, hole.centre.v, z); };
  add(hole.sunk_in_back ? wide : wide - deep, 0);
  if (deep > 0 && deep < top_mm) add(radius, hole.sunk_in_back ? deep : top_mm - deep);
  add(hole.sunk_in_back ? wide - deep : wide, top_mm);
  BRepBuilderAPI_MakePolygon line;
  for (const gp_Pnt& p : side) line.Add(p);
  const gp_Ax1 axis(gp_Pnt(hole.centre.u, hole.centre.v, 0), gp_Dir(0, 0, 1));
  BRepPrimAPI_MakeRevol turn(line.Wire(), axis);
  for (TopExp_Explorer faces(turn.Shape(), TopAbs_FACE); faces.More(); faces.Next()) {
    add_wall(TopoDS::Face(faces.Current()),
             [&](const gp_Pnt& at) { return gp_Vec(hole.centre.u - at.X(), hole.centre.v - at.Y(), 0); });
  }
  return {{forward(turn.Generated(line.FirstVertex()).First())},
          {forward(turn.Generated(line.LastVertex()).First())}};
}

void FlatWalls::add_flat(const Loop& outer, const Loops& holes, double depth_mm, Looks looks) {
  TopoDS_Face face;
  builder_.MakeFace(face, new Geom_Plane(gp_Pnt(0, 0, depth_mm), gp_Dir(0, 0, 1)), Precision::Confusion());
  builder_.Add(face, wire_of(outer, true));
  for (const Loop& hole : holes) builder_.Add(face, wire_of(hole, false));
  if (looks == Looks::back) face.Reverse();
  builder_.Add(shell_, face);
}

TopoDS_Solid FlatWalls::solid() {
  shell_.Closed(true);
  TopoDS_Solid solid;
  builder_.MakeSolid(solid);
  builder_.Add(solid, shell_);
  return solid;
}

}  // namespace prismwright
