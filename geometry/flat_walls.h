#pragma once

#include <functional>
#include <vector>

#include <BRep_Builder.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Shell.hxx>
#include <TopoDS_Solid.hxx>
#include <TopoDS_Wire.hxx>
#include <gp_Pnt.hxx>
#include <gp_Vec.hxx>

#include "core/frame/frame_parts.h"

namespace prismwright {

/// Lays the faces of a plate one by one into a shell: walls square to the plate, and flat faces between their
/// loops. Every edge is made once and shared. Throws Standard_Failure when the modeller refuses an edge.
class FlatWalls {
 public:
  using Loop = std::vector<TopoDS_Edge>;  ///< edges that follow each other, anticlockwise seen from the front
  using Loops = std::vector<Loop>;
  struct Tube {
    Loop low;
    Loop high;
  };
  enum class Brass { inside, outside };
  enum class Looks { back, front };

  FlatWalls() { builder_.MakeShell(shell_); }

  /// Walls over an anticlockwise chain from one depth to another; answers their two rims.
  Tube tube(const PlateChain& chain, double from_mm, double to_mm, Brass brass);
  /// Walls of a round hole from the back face to `top_mm`, with its cone.
  Tube hole(const PlateHole& hole, double top_mm);
  /// A flat face within a loop and outside others.
  void add_flat(const Loop& outer, const Loops& holes, double depth_mm, Looks looks);
  /// The shell as a solid; call it last.
  TopoDS_Solid solid();

 private:
  /// `outward` answers a vector out of the brass at a place of the face.
  void add_wall(TopoDS_Face face, const std::function<gp_Vec(const gp_Pnt&)>& outward);

  BRep_Builder builder_;
  TopoDS_Shell shell_;
};

}  // namespace prismwright
