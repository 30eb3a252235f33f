#include "geometry/mould_skin.h"

#include <cmath>
#include <map>
#include <optional>
#include <set>
#include <tuple>

#include <BRepBuilderAPI_Copy.hxx>
#include <BRepGProp_Face.hxx>
#include <BRepMesh_IncrementalMesh.hxx>
#include <BRep_Tool.hxx>
#include <Poly_Triangulation.hxx>
#include <Standard_Failure.hxx>
#include <TopExp_Explorer.hxx>
#include <TopLoc_Location.hxx>
#include <TopoDS.hxx>

namespace prismwright {

namespace {

constexpr double kAngle_rad = 0.12;
constexpr double kSameNormal = 5e-4;
constexpr double kSame_mm = 1e-5;  ///< corners nearer than this are one

class SkinMaker {
 public:
  explicit SkinMaker(const PlannedPrism& prism) : prism_(prism) {}

  void add(const TopoDS_Face& face) {
    TopLoc_Location place;
    const Handle(Poly_Triangulation) mesh = BRep_Tool::Triangulation(face, place);
    if (mesh.IsNull() || !mesh->HasUVNodes()) throw Standard_Failure("a face has no triangles");
    const BRepGProp_Face surface(face);
    const gp_Trsf move = place.Transformation();
    const bool turned = face.Orientation() == TopAbs_REVERSED;
    SkinFace own;
    normals_.clear();
    std::vector<int> index;
    for (int i = 1; i <= mesh->NbNodes(); ++i) index.push_back(point(mesh->Node(i).Transformed(move)));
    for (int i = 1; i <= mesh->NbTriangles(); ++i) {
      std::array<int, 3> n{};
      mesh->Triangle(i).Get(n[0], n[1], n[2]);
      if (turned) std::swap(n[1], n[2]);
      const gp_XY middle = (mesh->UVNode(n[0]).XY() + mesh->UVNode(n[1]).XY() + mesh->UVNode(n[2]).XY()) / 3;
      const auto normal = normal_at(surface, middle);
      if (!normal) continue;
      for (const int k : n) {
        // The kernel gives no normal at a cone's tip.
        if (const auto at = normal_at(surface, mesh->UVNode(k).XY())) keep_normal(*at, own);
      }
      keep_normal(*normal, own);
      keep({index[std::size_t(n[0] - 1)], index[std::size_t(n[1] - 1)], index[std::size_t(n[2] - 1)]}, *normal,
           own);
    }
    name(own);
    skin_.faces.push_back(std::move(own));
  }

  MouldSkin take() { return std::move(skin_); }

 private:
  static std::optional<gp_Vec> normal_at(const BRepGProp_Face& surface, const gp_XY& uv) {
    gp_Pnt p;
    gp_Vec n;
    surface.Normal(uv.X(), uv.Y(), p, n);
    const double size = n.Magnitude();
    return size > 1e-12 ? std::optional(n / size) : std::nullopt;
  }

  /// Each normal of a face once, to some hundredths of a degree.
  void keep_normal(const gp_Vec& n, SkinFace& own) {
    const auto key = std::tuple(std::llround(n.X() / kSameNormal), std::llround(n.Y() / kSameNormal),
                                std::llround(n.Z() / kSameNormal));
    if (normals_.insert(key).second) own.normals.push_back(n);
  }

  int point(const gp_Pnt& p) {
    const auto key = std::tuple(std::llround(p.X() / kSame_mm), std::llround(p.Y() / kSame_mm),
                                std::llround(p.Z() / kSame_mm));
    const auto [at, fresh] = index_.try_emplace(key, static_cast<int>(skin_.points.size()));
    if (fresh) skin_.points.push_back(p);
    return at->second;
  }

  void keep(const std::array<int, 3>& corners, const gp_Vec& normal, SkinFace& own) {
    if (corners[0] == corners[1] || corners[1] == corners[2] || corners[2] == corners[0]) return;
    const auto& points = skin_.points;
    const gp_Pnt& a = points[std::size_t(corners[0])];
    const gp_Vec u(a, points[std::size_t(corners[1])]);
    const gp_Vec v(a, points[std::size_t(corners[2])]);
    const double area = u.Crossed(v).Magnitude() / 2;
    own.area_mm2 += area;
    skin_.triangles.push_back({corners, static_cast<int>(skin_.faces.size()), normal, area});
  }

  /// By its largest triangle, which lies well within the face.
  void name(SkinFace& own) const {
    const SkinTriangle* largest = nullptr;
    for (const SkinTriangle& t : skin_.triangles) {
      if (t.face != static_cast<int>(skin_.faces.size())) continue;
      if (largest == nullptr || t.area_mm2 > largest->area_mm2) largest = &t;
    }
    if (largest == nullptr) return;
    const FaceWord word = face_word(prism_, skin_.middle(*largest), largest->normal);
    own.word = word.word;
    own.optical = word.optical;
  }

  const PlannedPrism& prism_;
  MouldSkin skin_;
  std::map<std::tuple<long long, long long, long long>, int> index_;
  std::set<std::tuple<long long, long long, long long>> normals_;
};

}  // namespace

gp_Pnt MouldSkin::middle(const SkinTriangle& t) const {
  gp_XYZ sum;
  for (const int corner : t.corners) sum += points[std::size_t(corner)].XYZ();
  return gp_Pnt(sum / 3);
}

MouldSkin mould_skin(const TopoDS_Shape& master, const PlannedPrism& prism, double chord_mm) {
  const TopoDS_Shape own = BRepBuilderAPI_Copy(master, Standard_True, Standard_False).Shape();
  BRepMesh_IncrementalMesh mesher(own, chord_mm, Standard_False, kAngle_rad, Standard_False);
  SkinMaker maker(prism);
  for (TopExp_Explorer it(own, TopAbs_FACE); it.More(); it.Next()) maker.add(TopoDS::Face(it.Current()));
  return maker.take();
}

}  // namespace prismwright
