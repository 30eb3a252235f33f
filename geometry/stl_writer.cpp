#include "geometry/stl_writer.h"

#include <array>
#include <bit>
#include <cstdint>
#include <cstring>
#include <new>

#include <fmt/format.h>
#include <BRepBuilderAPI_Copy.hxx>
#include <BRepMesh_IncrementalMesh.hxx>
#include <BRep_Tool.hxx>
#include <Poly_Triangulation.hxx>
#include <Standard_Failure.hxx>
#include <TopExp_Explorer.hxx>
#include <TopLoc_Location.hxx>
#include <TopoDS.hxx>

namespace prismwright {

namespace {

static_assert(std::endian::native == std::endian::little, "STL files hold little-endian numbers");

constexpr std::size_t kHeadBytes = 80;
constexpr std::size_t kFacetBytes = 50;
/// The mesher holds its deflection at places it looks at; half of what is asked leaves room between them.
constexpr double kShareOfChord = 0.5;
constexpr double kAngle_rad = 0.35;

using Corner = std::array<float, 3>;

Corner corner_of(const gp_Pnt& p) {
  return {static_cast<float>(p.X()), static_cast<float>(p.Y()), static_cast<float>(p.Z())};
}

class StlText {
 public:
  explicit StlText(const std::string& mark) : bytes_(kHeadBytes + sizeof(std::uint32_t), '\0') {
    const std::string head = fmt::format("{} mm", mark).substr(0, kHeadBytes);
    std::memcpy(bytes_.data(), head.data(), head.size());
  }

  void add_facet(const Corner& a, const Corner& b, const Corner& c) {
    if (a == b || b == c || c == a) return;
    append(normal_of(a, b, c));
    append(a);
    append(b);
    append(c);
    bytes_.append(2, '\0');
    ++facets_;
  }

  std::string take() {
    std::memcpy(bytes_.data() + kHeadBytes, &facets_, sizeof facets_);
    return std::move(bytes_);
  }
  [[nodiscard]] std::uint32_t facets() const { return facets_; }

 private:
  static Corner normal_of(const Corner& a, const Corner& b, const Corner& c) {
    const gp_Vec u(double(b[0]) - a[0], double(b[1]) - a[1], double(b[2]) - a[2]);
    const gp_Vec v(double(c[0]) - a[0], double(c[1]) - a[1], double(c[2]) - a[2]);
    const gp_Vec n = u.Crossed(v);
    const double size = n.Magnitude();
    if (size <= 0) return {0, 0, 0};
    return corner_of(gp_Pnt(n.XYZ() / size));
  }

  void append(const Corner& corner) {
    bytes_.append(reinterpret_cast<const char*>(corner.data()), sizeof corner);
  }

  std::string bytes_;
  std::uint32_t facets_ = 0;
};

/// Answers false when the face has no facets.
bool add_face(const TopoDS_Face& face, StlText& text) {
  TopLoc_Location place;
  const Handle(Poly_Triangulation) mesh = BRep_Tool::Triangulation(face, place);
  if (mesh.IsNull()) return false;
  const gp_Trsf move = place.Transformation();
  for (int i = 1; i <= mesh->NbTriangles(); ++i) {
    int a = 0, b = 0, c = 0;
    mesh->Triangle(i).Get(a, b, c);
    if (face.Orientation() == TopAbs_REVERSED) std::swap(b, c);
    text.add_facet(corner_of(mesh->Node(a).Transformed(move)), corner_of(mesh->Node(b).Transformed(move)),
                   corner_of(mesh->Node(c).Transformed(move)));
  }
  return true;
}

Problem unmeshed(const std::string& mark, std::string_view why) {
  return request_problem(
      "stl", mark,
      fmt::format("{}: its skin could not be divided into facets ({}). Choose another chord tolerance.", mark,
                  why));
}

}  // namespace

Outcome<std::string> stl_bytes(const std::string& mark, const TopoDS_Shape& shape, double chord_mm) {
  try {
    const TopoDS_Shape own = BRepBuilderAPI_Copy(shape, Standard_False, Standard_False).Shape();
    BRepMesh_IncrementalMesh mesher(own, kShareOfChord * chord_mm, Standard_False, kAngle_rad, Standard_False);
    StlText text(mark);
    for (TopExp_Explorer it(own, TopAbs_FACE); it.More(); it.Next()) {
      if (!add_face(TopoDS::Face(it.Current()), text)) return unmeshed(mark, "a face has none");
    }
    if (text.facets() == 0) return unmeshed(mark, "there are none");
    return text.take();
  } catch (const Standard_Failure& failure) {
    return unmeshed(mark, failure.GetMessageString());
  } catch (const std::bad_alloc&) {
    return unmeshed(mark, "memory ran out");
  }
}

}  // namespace prismwright
