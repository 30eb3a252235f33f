#include "geometry/plate_solid.h"

#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepBuilderAPI_MakeVertex.hxx>
#include <BRep_Builder.hxx>
#include <Geom_Plane.hxx>
#include <Precision.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Shell.hxx>
#include <TopoDS_Solid.hxx>
#include <TopoDS_Vertex.hxx>
#include <TopoDS_Wire.hxx>
#include <gp_Dir.hxx>
#include <gp_Pnt.hxx>

#include "core/frame/plate_polygons.h"

namespace prismwright {
namespace {

constexpr double kThrough_mm = 1e-6;

// A closed outline at two depths with the upright walls between them: every edge is made once and shared.
struct Walls {
  struct Level {
    double depth = 0;
    std::vector<TopoDS_Vertex> corners;
    std::vector<TopoDS_Edge> edges;  // from corner i to corner i + 1
  };
  Level outer;  // nearer the plate's outer face
  Level inner;
  std::vector<TopoDS_Edge> uprights;  // from outer corner i to inner corner i
};

class PlateBuilder {
 public:
  explicit PlateBuilder(const PlateShape& plate)
      : plate_(plate), hand_(plate.side == Side::clockwise ? 1 : -1) {
    builder_.MakeShell(shell_);
  }

  TopoDS_Solid build() {
    const double floor = plate_.thickness_mm - plate_.pocket_mm;
    const bool through = floor <= kThrough_mm;
    const Walls rim = walls(plate_.outline, 0, plate_.thickness_mm);
    std::vector<Walls> pockets;
    for (const PlateOutline& outline : plate_.pockets) {
      pockets.push_back(walls(outline, through ? 0 : floor, plate_.thickness_mm));
    }
    builder_.Add(shell_, flat_face(rim.outer, through ? outer_loops(pockets) : Loops{}, false));
    builder_.Add(shell_, flat_face(rim.inner, inner_loops(pockets), true));
    add_wall_faces(rim, plate_.outline, true);
    for (std::size_t i = 0; i < pockets.size(); ++i) {
      if (!through) builder_.Add(shell_, flat_face(pockets[i].outer, {}, true));
      add_wall_faces(pockets[i], plate_.pockets[i], false);
    }
    shell_.Closed(true);
    TopoDS_Solid solid;
    builder_.MakeSolid(solid);
    builder_.Add(solid, shell_);
    return solid;
  }

 private:
  using Loops = std::vector<TopoDS_Wire>;

  Loops outer_loops(const std::vector<Walls>& pockets) {
    Loops loops;
    for (const Walls& pocket : pockets) loops.push_back(loop(pocket.outer, false));
    return loops;
  }

  Loops inner_loops(const std::vector<Walls>& pockets) {
    Loops loops;
    for (const Walls& pocket : pockets) loops.push_back(loop(pocket.inner, false));
    return loops;
  }

  [[nodiscard]] gp_Pnt place(PlatePoint p, double depth) const { return {p.u, hand_ * depth, p.v}; }

  Walls::Level level(const PlateOutline& outline, double depth) {
    Walls::Level level;
    level.depth = depth;
    for (const PlatePoint p : outline) level.corners.push_back(BRepBuilderAPI_MakeVertex(place(p, depth)));
    for (std::size_t i = 0; i < outline.size(); ++i) {
      level.edges.push_back(
          BRepBuilderAPI_MakeEdge(level.corners[i], level.corners[(i + 1) % outline.size()]).Edge());
    }
    return level;
  }

  Walls walls(const PlateOutline& outline, double outer_depth, double inner_depth) {
    Walls walls{level(outline, outer_depth), level(outline, inner_depth), {}};
    for (std::size_t i = 0; i < outline.size(); ++i) {
      walls.uprights.push_back(BRepBuilderAPI_MakeEdge(walls.outer.corners[i], walls.inner.corners[i]).Edge());
    }
    return walls;
  }

  // The loop of an anticlockwise outline, walked as (u, v) shows it or the other way.
  TopoDS_Wire loop(const Walls::Level& level, bool as_drawn) {
    TopoDS_Wire wire;
    builder_.MakeWire(wire);
    const std::size_t count = level.edges.size();
    for (std::size_t i = 0; i < count; ++i) {
      const TopoDS_Edge& edge = level.edges[as_drawn ? i : count - 1 - i];
      builder_.Add(wire, as_drawn ? edge : TopoDS::Edge(edge.Reversed()));
    }
    wire.Closed(true);
    return wire;
  }

  TopoDS_Face plane_face(const gp_Pnt& on, const gp_Dir& normal) {
    TopoDS_Face face;
    builder_.MakeFace(face, new Geom_Plane(on, normal), Precision::Confusion());
    return face;
  }

  // A face square to the depth. Its plane looks so that an outline runs anticlockwise as drawn; the face of
  // the plate that looks the other way is turned over.
  TopoDS_Face flat_face(const Walls::Level& level, const Loops& holes, bool towards_depth) {
    const bool plane_looks_along_depth = hand_ < 0;  // u x v = X x Z = -Y
    TopoDS_Face face = plane_face(gp_Pnt(0, hand_ * level.depth, 0), gp_Dir(0, -1, 0));
    builder_.Add(face, loop(level, true));
    for (const TopoDS_Wire& hole : holes) builder_.Add(face, hole);
    if (towards_depth != plane_looks_along_depth) face.Reverse();
    return face;
  }

  // The plate lies on the left of its rim's outline, and outside a pocket's.
  void add_wall_faces(const Walls& walls, const PlateOutline& outline, bool rim) {
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const std::size_t j = (i + 1) % outline.size();
      const gp_Vec along(place(outline[i], 0), place(outline[j], 0));
      const gp_Dir right = gp_Dir(along.Crossed(gp_Vec(0, -1, 0)));  // right of the outline's walk
      TopoDS_Face face = plane_face(place(outline[i], walls.outer.depth), right);
      TopoDS_Wire wire;
      builder_.MakeWire(wire);
      // Seen from the right of the walk, with the depth upward or downward by the rib's hand.
      builder_.Add(wire, walls.outer.edges[i]);
      builder_.Add(wire, walls.uprights[j]);
      builder_.Add(wire, walls.inner.edges[i].Reversed());
      builder_.Add(wire, walls.uprights[i].Reversed());
      wire.Closed(true);
      const bool anticlockwise = hand_ < 0;
      builder_.Add(face, anticlockwise ? wire : TopoDS::Wire(wire.Reversed()));
      if (!rim) face.Reverse();
      builder_.Add(shell_, face);
    }
  }

  const PlateShape& plate_;
  double hand_;
  BRep_Builder builder_;
  TopoDS_Shell shell_;
};

}  // namespace

TopoDS_Shape plate_solid(const PlateShape& plate) { return PlateBuilder(plate).build(); }

double plate_volume_mm3(const PlateShape& plate) {
  double volume = signed_area_mm2(plate.outline) * plate.thickness_mm;
  for (const PlateOutline& pocket : plate.pockets) volume -= signed_area_mm2(pocket) * plate.pocket_mm;
  return volume;
}

}  // namespace prismwright
