#pragma once

#include <array>
#include <map>
#include <optional>
#include <vector>

#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Vertex.hxx>
#include <gp_Pln.hxx>
#include <gp_Pnt.hxx>

#include "geometry/mould_rim.h"

namespace prismwright {

/// The block in plan, in the frame whose +Z is the draw, mm.
struct BlockPlan {
  double x0 = 0;
  double y0 = 0;
  double x1 = 0;
  double y1 = 0;
};

/// Straight edges between vertices, each made once and shared by all faces on it.
class SharedEdges {
 public:
  int add(const gp_Pnt& place);
  int add(const TopoDS_Vertex& vertex);
  [[nodiscard]] const gp_Pnt& place(int i) const { return places_[std::size_t(i)]; }
  [[nodiscard]] const TopoDS_Vertex& vertex(int i) const { return vertices_[std::size_t(i)]; }
  /// The edge walked from one to the other.
  TopoDS_Edge edge(int from, int to);
  /// A flat face bounded by a closed walk, anticlockwise seen from where its normal points.
  TopoDS_Face flat_face(const std::vector<int>& walk, const gp_Pln& plane);

 private:
  std::vector<gp_Pnt> places_;
  std::vector<TopoDS_Vertex> vertices_;
  std::map<std::pair<int, int>, TopoDS_Edge> edges_;
};

/// The parting outside the master: from its rim to the walls of the block, each upright line through it once.
struct PartingSheet {
  std::vector<TopoDS_Face> faces;  ///< all with their normal upward
  /// Walks along the block's walls from corner to corner (y0, x1, y1, x0), indices into the shared edges.
  std::array<std::vector<int>, 4> walls;
  bool one_plane = false;
  double low_mm = 0;                             ///< of the rim
  double high_mm = 0;                            ///< of the rim
  std::vector<std::array<gp_Pnt, 3>> triangles;  ///< the sheet beyond the strip, for heights

  /// Height of the sheet at a place outside the master; blank on the strip beside the rim and in the master.
  [[nodiscard]] std::optional<double> height_mm(double x, double y) const;
};

/// Lays the sheet. Where a loop is level its plane carries on. Elsewhere a narrow strip, at most `strip_mm`
/// wide, leads level from each rim edge outward, and flat triangles from there to the walls, at heights taken
/// from the rim near by. Throws Standard_Failure where it folds.
PartingSheet parting_sheet(const RimmedMaster& master, const BlockPlan& plan, double strip_mm,
                           double spacing_mm, SharedEdges& edges);

/// The ruled face from a rim edge to the straight edge between two outer places; its normal upward.
TopoDS_Face strip_face(const RimEdge& rim, int from, int to, int outer_from, int outer_to, SharedEdges& edges);

}  // namespace prismwright
