#pragma once

#include <algorithm>
#include <cmath>
#include <fstream>
#include <string>
#include <vector>

#include <BRepAdaptor_Surface.hxx>
#include <BRepBndLib.hxx>
#include <BRepExtrema_DistShapeShape.hxx>
#include <BRepTools.hxx>
#include <BRep_Builder.hxx>
#include <Bnd_Box.hxx>
#include <STEPControl_Reader.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_IndexedDataMapOfShapeListOfShape.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Compound.hxx>
#include <gp_Dir.hxx>

#include "core/base/angle.h"
#include "core/frame/frame_plan.h"
#include "geometry/step_writer.h"
#include "tests/support/empty_folder.h"

/// Measures the room of prism ends in their pockets from what STEP files hold: nothing of the plan but where a
/// rib stands and which prisms it takes.
namespace prismwright {

/// A part written to a STEP file of its own and read back by the kernel's plain reader; null when it cannot.
inline TopoDS_Shape reread(const std::string& mark, const TopoDS_Shape& shape, PartStuff stuff) {
  const auto text = step_text({mark, shape, stuff});
  if (!text) return {};
  const EmptyFolder folder;
  const std::string path = folder.file(mark + ".step");
  std::ofstream(path, std::ios::binary) << *text;
  STEPControl_Reader reader;
  if (reader.ReadFile(path.c_str()) != IFSelect_RetDone) return {};
  reader.TransferRoots();
  return reader.OneShape();
}

/// From the rib's outer face towards its inner one.
inline gp_Dir inward_of(const RibPlan& rib) {
  const double a = radians(rib.azimuth_deg);
  const double way = rib.side == Side::clockwise ? 1 : -1;
  return {-way * std::sin(a), way * std::cos(a), 0};
}

inline bool looks_along(const TopoDS_Face& face, const gp_Dir& way) {
  const BRepAdaptor_Surface surface(face);
  if (surface.GetType() != GeomAbs_Plane) return false;
  const gp_Dir normal = surface.Plane().Axis().Direction();
  const bool turned = face.Orientation() == TopAbs_REVERSED || !surface.Plane().Direct();
  return (turned ? normal.Reversed() : normal).IsEqual(way, 1e-6);
}

/// Walls of all pockets: the faces behind the openings of the rib's inner face that are not round holes.
inline std::vector<TopoDS_Face> pocket_walls(const TopoDS_Shape& rib, const gp_Dir& inward) {
  TopTools_IndexedDataMapOfShapeListOfShape faces_at;
  TopExp::MapShapesAndAncestors(rib, TopAbs_EDGE, TopAbs_FACE, faces_at);
  std::vector<TopoDS_Face> walls;
  const auto add_behind = [&](const TopoDS_Shape& edge, const TopoDS_Face& front) {
    for (const TopoDS_Shape& face : faces_at.FindFromKey(edge)) {
      if (!face.IsSame(front)) walls.push_back(TopoDS::Face(face));
    }
  };
  for (TopExp_Explorer faces(rib, TopAbs_FACE); faces.More(); faces.Next()) {
    const TopoDS_Face front = TopoDS::Face(faces.Current());
    if (!looks_along(front, inward)) continue;
    const TopoDS_Wire outer = BRepTools::OuterWire(front);
    for (TopExp_Explorer wires(front, TopAbs_WIRE); wires.More(); wires.Next()) {
      if (wires.Current().IsSame(outer) || wires.Current().NbChildren() < 2) continue;
      for (TopExp_Explorer edges(wires.Current(), TopAbs_EDGE); edges.More(); edges.Next()) {
        add_behind(edges.Current(), front);
      }
    }
  }
  return walls;
}

inline Bnd_Box box_of(const TopoDS_Shape& shape, double more_mm) {
  Bnd_Box box;
  BRepBndLib::Add(shape, box, false);
  box.Enlarge(more_mm);
  return box;
}

inline double least_mm(const TopoDS_Shape& a, const TopoDS_Shape& b) {
  const BRepExtrema_DistShapeShape gap(a, b, 1e-7);
  return gap.IsDone() ? gap.Value() : -1;
}

inline constexpr double kNear_mm = 3;

/// One side of a prism end and what it finds next to it.
struct SideGap {
  std::string mark;
  int side = 0;               ///< number of the prism's face
  double wall_mm = 1e9;       ///< to the nearest wall of the pocket; 1e9: none near
  double neighbour_mm = 1e9;  ///< to the nearest prism beside it; 1e9: none near
  /// No wall stands within `room_mm`, and a prism stands nearer than any.
  [[nodiscard]] bool faces_neighbour(double room_mm) const {
    return wall_mm > room_mm && neighbour_mm < wall_mm;
  }
};

/// A prism as read back, by its mark.
struct ReadPrism {
  std::string mark;
  TopoDS_Shape shape;
};

/// Every side of a prism that reaches into the rib's pockets, its end face left out: the faces that come before
/// the rib's inner face.
inline std::vector<SideGap> side_gaps(const ReadPrism& prism, const std::vector<ReadPrism>& others,
                                      const std::vector<TopoDS_Face>& walls, const RibPlan& rib) {
  const gp_Dir inward = inward_of(rib);
  std::vector<SideGap> sides;
  int number = 0;
  for (TopExp_Explorer faces(prism.shape, TopAbs_FACE); faces.More(); faces.Next()) {
    const TopoDS_Face face = TopoDS::Face(faces.Current());
    ++number;
    double nearest_depth = 1e9;
    for (TopExp_Explorer corners(face, TopAbs_VERTEX); corners.More(); corners.Next()) {
      const gp_Pnt p = BRep_Tool::Pnt(TopoDS::Vertex(corners.Current()));
      nearest_depth = std::min(nearest_depth, gp_Vec(gp_Pnt(0, 0, 0), p).Dot(gp_Vec(inward)));
    }
    if (looks_along(face, inward.Reversed()) || nearest_depth > rib.thickness_mm - 0.1) continue;
    SideGap side{prism.mark, number};
    const Bnd_Box near = box_of(face, kNear_mm);
    BRep_Builder builder;
    TopoDS_Compound brass;
    builder.MakeCompound(brass);
    for (const TopoDS_Face& wall : walls) {
      if (!near.IsOut(box_of(wall, 0))) builder.Add(brass, wall);
    }
    if (brass.NbChildren() > 0) side.wall_mm = least_mm(face, brass);
    for (const ReadPrism& other : others) {
      if (other.mark == prism.mark || near.IsOut(box_of(other.shape, 0))) continue;
      side.neighbour_mm = std::min(side.neighbour_mm, least_mm(face, other.shape));
    }
    if (side.wall_mm < 1e9 || side.neighbour_mm < 1e9) sides.push_back(side);
  }
  return sides;
}

}  // namespace prismwright
