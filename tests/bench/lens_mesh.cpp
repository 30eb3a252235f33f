#include "tests/bench/lens_mesh.h"

#include <algorithm>
#include <map>

#include <fmt/format.h>
#include <BRepAdaptor_Surface.hxx>
#include <BRepBuilderAPI_Copy.hxx>
#include <BRepMesh_IncrementalMesh.hxx>
#include <BRepTools.hxx>
#include <BRep_Tool.hxx>
#include <Poly_Triangulation.hxx>
#include <Standard_Failure.hxx>
#include <TopExp_Explorer.hxx>
#include <TopLoc_Location.hxx>
#include <TopoDS.hxx>

namespace prismwright::bench {

namespace {

constexpr double kDegree = 3.14159265358979323846 / 180;

Vector vector_of(const gp_XYZ& v) { return {v.X(), v.Y(), v.Z()}; }

/// A place of a surface with its outward normal.
struct SurfacePoint {
  gp_Pnt place;
  Vector normal;
};

/// A face's surface, its normals turned out of the solid.
class Skin {
 public:
  explicit Skin(const TopoDS_Face& face)
      : surface_(face), side_(face.Orientation() == TopAbs_REVERSED ? -1 : 1) {
    double u_low = 0, u_high = 0, v_low = 0, v_high = 0;
    BRepTools::UVBounds(face, u_low, u_high, v_low, v_high);
    middle_ = gp_Pnt2d((u_low + u_high) / 2, (v_low + v_high) / 2);
  }

  [[nodiscard]] SurfacePoint at(const gp_Pnt2d& uv) const {
    gp_Pnt place;
    gp_Vec across = normal_at(uv, place);
    if (across.Magnitude() < kPole) {
      // On a pole (the axis of a bull's-eye centre) the surface has no normal of its own: take it beside.
      gp_Pnt beside;
      const double step = 1e-6;
      across =
          normal_at({uv.X() + step * (middle_.X() - uv.X()), uv.Y() + step * (middle_.Y() - uv.Y())}, beside);
    }
    return {place, side_ * unit(vector_of(across.XYZ()))};
  }

 private:
  static constexpr double kPole = 1e-9;

  [[nodiscard]] gp_Vec normal_at(const gp_Pnt2d& uv, gp_Pnt& place) const {
    gp_Vec along_u, along_v;
    surface_.D1(uv.X(), uv.Y(), place, along_u, along_v);
    return along_u.Crossed(along_v);
  }

  BRepAdaptor_Surface surface_;
  double side_;
  gp_Pnt2d middle_;
};

/// Sums of errors over area.
struct ErrorSums {
  double area = 0;
  double normal2 = 0;
  double place2 = 0;
  MeshError most;

  void add(double size, double normal_deg, double place_mm) {
    area += size;
    normal2 += size * normal_deg * normal_deg;
    place2 += size * place_mm * place_mm;
    most.normal_most_deg = std::max(most.normal_most_deg, normal_deg);
    most.place_most_mm = std::max(most.place_most_mm, place_mm);
  }
  [[nodiscard]] MeshError error() const {
    MeshError all = most;
    if (area > 0) all.normal_rms_deg = std::sqrt(normal2 / area);
    if (area > 0) all.place_rms_mm = std::sqrt(place2 / area);
    return all;
  }
};

/// The triangles of one solid in its own frame.
struct SolidMesh {
  std::vector<LensMesh::Corner> corners;
  std::vector<LensMesh::Triangle> triangles;
};

void measure(const SolidMesh& mesh, const LensMesh::Triangle& t, const SurfacePoint& exact, ErrorSums& errors) {
  const LensMesh::Corner &a = mesh.corners[t.a], &b = mesh.corners[t.b], &c = mesh.corners[t.c];
  const double area = length(cross(b.place - a.place, c.place - a.place)) / 2;
  if (!(area > 1e-8)) return;
  const Vector normal = unit(a.normal + b.normal + c.normal);
  const double turn = std::asin(std::min(1.0, length(cross(normal, exact.normal)))) / kDegree;
  const Vector off = vector_of(exact.place.XYZ()) - (1.0 / 3) * (a.place + b.place + c.place);
  errors.add(area, turn, std::abs(dot(off, normal)));
}

void add_face(const TopoDS_Face& face, SolidMesh& mesh, ErrorSums& errors) {
  TopLoc_Location place;
  const Handle(Poly_Triangulation) facets = BRep_Tool::Triangulation(face, place);
  if (facets.IsNull() || !facets->HasUVNodes()) throw Standard_Failure("a face has no triangles");
  const Skin skin(face);
  const auto first = static_cast<std::uint32_t>(mesh.corners.size());
  for (int i = 1; i <= facets->NbNodes(); ++i) {
    mesh.corners.push_back({vector_of(facets->Node(i).Transformed(place.Transformation()).XYZ()),
                            skin.at(facets->UVNode(i)).normal});
  }
  for (int i = 1; i <= facets->NbTriangles(); ++i) {
    int a = 0, b = 0, c = 0;
    facets->Triangle(i).Get(a, b, c);
    const gp_XY middle = (facets->UVNode(a).XY() + facets->UVNode(b).XY() + facets->UVNode(c).XY()) / 3;
    if (face.Orientation() == TopAbs_REVERSED) std::swap(b, c);
    const auto at = [&](int node) { return first + static_cast<std::uint32_t>(node - 1); };
    const LensMesh::Triangle triangle{at(a), at(b), at(c), 0};
    mesh.triangles.push_back(triangle);
    measure(mesh, triangle, skin.at(gp_Pnt2d(middle)), errors);
  }
}

class Mesher {
 public:
  Mesher(double deflection_mm, double turn_rad) : deflection_mm_(deflection_mm), turn_rad_(turn_rad) {}

  void add(const std::string& mark, const TopoDS_Shape& shape, bool glass) {
    const SolidMesh& own = mesh_of(shape, glass);
    const gp_Trsf move = shape.Location().Transformation();
    const auto first = static_cast<std::uint32_t>(lens_.corners.size());
    const auto part = static_cast<std::uint32_t>(lens_.parts.size());
    lens_.parts.push_back({mark, glass});
    for (const auto& [p, n] : own.corners) {
      lens_.corners.push_back({vector_of(gp_Pnt(p.x, p.y, p.z).Transformed(move).XYZ()),
                               vector_of(gp_Vec(n.x, n.y, n.z).Transformed(move).XYZ())});
    }
    for (const LensMesh::Triangle& t : own.triangles) {
      lens_.triangles.push_back({first + t.a, first + t.b, first + t.c, part});
    }
  }

  LensMesh take() {
    lens_.error = errors_.error();
    return std::move(lens_);
  }

 private:
  const SolidMesh& mesh_of(const TopoDS_Shape& shape, bool glass) {
    const auto [found, is_new] = made_.try_emplace({shape.TShape().get(), shape.Orientation()});
    if (!is_new) return found->second;
    const TopoDS_Shape own =
        BRepBuilderAPI_Copy(shape.Located(TopLoc_Location()), Standard_False, Standard_False).Shape();
    // Brass has flat faces and round edges that need no such care.
    const double fine = glass ? deflection_mm_ : std::max(deflection_mm_, 0.02);
    const double turn = glass ? turn_rad_ : std::max(turn_rad_, 0.1);
    BRepMesh_IncrementalMesh(own, fine, Standard_False, turn, Standard_True);
    ErrorSums unwanted;
    for (TopExp_Explorer it(own, TopAbs_FACE); it.More(); it.Next()) {
      add_face(TopoDS::Face(it.Current()), found->second, glass ? errors_ : unwanted);
    }
    return found->second;
  }

  double deflection_mm_;
  double turn_rad_;
  std::map<std::pair<const void*, int>, SolidMesh> made_;
  ErrorSums errors_;
  LensMesh lens_;
};

}  // namespace

Outcome<LensMesh> mesh_lens(const LensBodies& glass, const std::vector<FrameBody>& metal, double deflection_mm,
                            double turn_rad) {
  std::string mark;
  try {
    Mesher mesher(deflection_mm, turn_rad);
    for (const PrismBody& prism : glass.prisms) mesher.add(mark = prism.mark, prism.shape, true);
    for (const FrameBody& plate : metal) mesher.add(mark = plate.mark, plate.shape, false);
    return mesher.take();
  } catch (const Standard_Failure& failure) {
    return request_problem("mesh", mark,
                           fmt::format("{}: its skin could not be divided into triangles ({}). Choose another "
                                       "deflection.",
                                       mark, failure.GetMessageString()));
  }
}

}  // namespace prismwright::bench
