#pragma once

#include <vector>

#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Shape.hxx>
#include <TopoDS_Vertex.hxx>
#include <gp_Pnt.hxx>

namespace prismwright {

/// A piece of the line on a master that parts what faces up (+Z) from what faces down.
struct RimEdge {
  TopoDS_Edge edge;  ///< turned as the face above walks it: the master's shadow lies on its left
  TopoDS_Vertex from;
  TopoDS_Vertex to;
  gp_Pnt start;
  gp_Pnt finish;
};

/// A closed walk along the rim: anticlockwise in plan for the outer one, clockwise for a hole through the
/// master.
struct RimLoop {
  std::vector<RimEdge> edges;
  std::vector<gp_Pnt> places;  ///< points along it, closely, for what has to be measured from it
  bool hole = false;
  bool level = false;  ///< it lies in one plane, to 1e-5 mm, that leans by less than 60 deg
  gp_Pnt plane_place;  ///< of that plane
  gp_Dir plane_normal{0, 0, 1};
};

/// A master whose rim edges are divided, its faces sorted by the half that makes them.
struct RimmedMaster {
  std::vector<TopoDS_Face> above;  ///< faces upward
  std::vector<TopoDS_Face> below;
  std::vector<RimLoop> loops;  ///< the outer one first
};

/// Finds the rim of a master that lies with its draw along +Z and divides its edges, so that no piece bulges
/// from its chord, in plan, by more than an eighth of `strip_mm`; a loop that is level stays undivided.
/// Every face lies wholly on one side. Throws Standard_Failure where the rim does not close.
RimmedMaster rimmed(const TopoDS_Shape& master, double strip_mm);

}  // namespace prismwright
