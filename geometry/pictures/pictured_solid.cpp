#include "geometry/pictures/pictured_solid.h"

#include <algorithm>
#include <cmath>

#include <BRepBuilderAPI_Copy.hxx>
#include <BRepMesh_IncrementalMesh.hxx>
#include <BRepTools.hxx>
#include <BRep_Tool.hxx>
#include <Poly_PolygonOnTriangulation.hxx>
#include <Poly_Triangulation.hxx>
#include <Standard_Failure.hxx>
#include <TopExp.hxx>
#include <TopTools_IndexedDataMapOfShapeListOfShape.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>

namespace prismwright {

namespace {

constexpr double kAngle_rad = 0.3;
constexpr double kPole = 1e-9;
const double kSmooth = std::cos(3 * 3.14159265358979323846 / 180);

SpacePoint place_of(const gp_Pnt& p) { return {p.X(), p.Y(), p.Z()}; }

class SolidDivider {
 public:
  explicit SolidDivider(const TopoDS_Shape& own) : own_(own) { TopExp::MapShapes(own, TopAbs_FACE, faces_); }

  PicturedSolid divide() {
    for (int i = 1; i <= faces_.Extent(); ++i) add_face(TopoDS::Face(faces_(i)));
    TopTools_IndexedDataMapOfShapeListOfShape edges;
    TopExp::MapShapesAndAncestors(own_, TopAbs_EDGE, TopAbs_FACE, edges);
    for (int i = 1; i <= edges.Extent(); ++i) add_edge(TopoDS::Edge(edges.FindKey(i)), edges(i));
    return std::move(solid_);
  }

 private:
  void add_face(const TopoDS_Face& face) {
    TopLoc_Location where;
    const Handle(Poly_Triangulation) mesh = BRep_Tool::Triangulation(face, where);
    if (mesh.IsNull() || !mesh->HasUVNodes()) throw Standard_Failure("a face has no facets");
    const auto number = static_cast<std::uint32_t>(solid_.faces.size());
    const auto first = static_cast<std::uint32_t>(solid_.nodes.size());
    const FaceSurface& surface = solid_.faces.emplace_back(face);
    first_node_.push_back(first);
    const gp_Trsf place = where.Transformation();
    for (int i = 1; i <= mesh->NbNodes(); ++i) {
      const gp_Pnt2d uv = mesh->UVNode(i);
      const SpaceVector normal = surface.at(uv.X(), uv.Y()).normal;
      if (!(length(normal) > 0)) throw Standard_Failure("a face has no normal");
      solid_.nodes.push_back({place_of(mesh->Node(i).Transformed(place)), normal, uv.X(), uv.Y()});
    }
    for (int i = 1; i <= mesh->NbTriangles(); ++i) {
      int a = 0, b = 0, c = 0;
      mesh->Triangle(i).Get(a, b, c);
      if (face.Orientation() == TopAbs_REVERSED) std::swap(b, c);
      const auto at = [&](int node) { return first + static_cast<std::uint32_t>(node - 1); };
      solid_.facets.push_back({{at(a), at(b), at(c)}, number});
    }
  }

  /// The numbers of the nodes that an edge runs along in a face.
  std::vector<std::uint32_t> run_of(const TopoDS_Edge& edge, const TopoDS_Face& face) const {
    TopLoc_Location where;
    const Handle(Poly_Triangulation) mesh = BRep_Tool::Triangulation(face, where);
    const Handle(Poly_PolygonOnTriangulation) line = BRep_Tool::PolygonOnTriangulation(edge, mesh, where);
    std::vector<std::uint32_t> nodes;
    if (line.IsNull()) return nodes;
    const auto first = first_node_[static_cast<std::size_t>(faces_.FindIndex(face) - 1)];
    for (int i = 1; i <= line->NbNodes(); ++i)
      nodes.push_back(first + static_cast<std::uint32_t>(line->Node(i) - 1));
    return nodes;
  }

  void add_edge(const TopoDS_Edge& edge, const TopTools_ListOfShape& beside) {
    if (BRep_Tool::Degenerated(edge) || beside.IsEmpty()) return;
    const TopoDS_Face one = TopoDS::Face(beside.First());
    const TopoDS_Face other = TopoDS::Face(beside.Last());
    if (one.IsSame(other) && BRep_Tool::IsClosed(edge, one)) return;
    const auto first = run_of(edge, one);
    const auto second = run_of(edge, other);
    if (first.size() < 2 || first.size() != second.size()) return;
    PicturedSolid::Edge line;
    for (std::size_t i = 0; i < first.size(); ++i) {
      line.push_back(
          {solid_.nodes[first[i]].place, solid_.nodes[first[i]].normal, solid_.nodes[second[i]].normal});
    }
    const bool free = one.IsSame(other);
    const auto sharp = [](const PicturedSolid::EdgeNode& n) { return dot(n.first, n.second) < kSmooth; };
    if (free || std::any_of(line.begin(), line.end(), sharp)) solid_.edges.push_back(std::move(line));
  }

  const TopoDS_Shape& own_;
  TopTools_IndexedMapOfShape faces_;
  std::vector<std::uint32_t> first_node_;
  PicturedSolid solid_;
};

}  // namespace

FaceSurface::FaceSurface(const TopoDS_Face& face)
    : surface_(BRep_Tool::Surface(face)), side_(face.Orientation() == TopAbs_REVERSED ? -1 : 1) {
  double low_u = 0, high_u = 0, low_v = 0, high_v = 0;
  BRepTools::UVBounds(face, low_u, high_u, low_v, high_v);
  middle_u_ = (low_u + high_u) / 2;
  middle_v_ = (low_v + high_v) / 2;
}

SpaceVector FaceSurface::across(double u, double v, SpacePoint& place) const {
  gp_Pnt p;
  gp_Vec along_u, along_v;
  surface_->D1(u, v, p, along_u, along_v);
  place = place_of(p);
  const gp_Vec n = along_u.Crossed(along_v);
  return {n.X(), n.Y(), n.Z()};
}

FaceSurface::Point FaceSurface::at(double u, double v) const {
  Point point;
  SpaceVector n = across(u, v, point.place);
  if (!(length(n) > kPole)) {
    SpacePoint beside;
    n = across(u + 1e-6 * (middle_u_ - u), v + 1e-6 * (middle_v_ - v), beside);
  }
  if (length(n) > 0) point.normal = side_ * unit(n);
  return point;
}

PicturedSolid pictured_solid(const TopoDS_Shape& solid, double chord_mm) {
  const TopoDS_Shape own = BRepBuilderAPI_Copy(solid, Standard_False, Standard_False).Shape();
  const BRepMesh_IncrementalMesh mesher(own, chord_mm, Standard_False, kAngle_rad, Standard_False);
  return SolidDivider(own).divide();
}

}  // namespace prismwright
