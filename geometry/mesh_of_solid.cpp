#include "geometry/mesh_of_solid.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <new>

#include <fmt/format.h>
#include <BRepBuilderAPI_Copy.hxx>
#include <BRepMesh_IncrementalMesh.hxx>
#include <BRep_Tool.hxx>
#include <Poly_Triangulation.hxx>
#include <Standard_Failure.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>

namespace prismwright {

namespace {

constexpr double kFirstChord_mm = 0.02;
constexpr double kLeastChord_mm = 2e-5;
constexpr double kAngle_rad = 0.35;
constexpr int kTries = 8;

/// Corners as files keep them, each place once.
class CornerBook {
 public:
  std::uint32_t number(const gp_Pnt& p) {
    const std::array<float, 3> place = {single(p.X()), single(p.Y()), single(p.Z())};
    const auto [known, is_new] = known_.try_emplace(place, static_cast<std::uint32_t>(corners_.size()));
    if (is_new) corners_.push_back({place[0], place[1], place[2]});
    return known->second;
  }
  std::vector<SpacePoint> take() { return std::move(corners_); }

 private:
  static float single(double v) { return v == 0 ? 0.0F : static_cast<float>(v); }
  std::map<std::array<float, 3>, std::uint32_t> known_;
  std::vector<SpacePoint> corners_;
};

Problem unmeshed(const std::string& name, std::string_view why) {
  return request_problem(
      "mesh", name,
      fmt::format(
          "{}: its skin could not be divided into facets ({}). Change the sanding stock by a hundredth of a "
          "millimetre, or leave mesh files out and print from its STEP file.",
          name, why));
}

bool add_face(const TopoDS_Face& face, CornerBook& corners, SkinMesh& mesh) {
  TopLoc_Location where;
  const Handle(Poly_Triangulation) own = BRep_Tool::Triangulation(face, where);
  if (own.IsNull()) return false;
  const gp_Trsf place = where.Transformation();
  std::vector<std::uint32_t> numbers;
  for (int i = 1; i <= own->NbNodes(); ++i) numbers.push_back(corners.number(own->Node(i).Transformed(place)));
  for (int i = 1; i <= own->NbTriangles(); ++i) {
    int a = 0, b = 0, c = 0;
    own->Triangle(i).Get(a, b, c);
    if (face.Orientation() == TopAbs_REVERSED) std::swap(b, c);
    const std::array<std::uint32_t, 3> facet = {numbers[static_cast<std::size_t>(a - 1)],
                                                numbers[static_cast<std::size_t>(b - 1)],
                                                numbers[static_cast<std::size_t>(c - 1)]};
    if (facet[0] != facet[1] && facet[1] != facet[2] && facet[2] != facet[0]) mesh.facets.push_back(facet);
  }
  return true;
}

Outcome<SkinMesh> meshed(const std::string& name, const TopoDS_Shape& solid, double chord_mm) {
  auto mesh = skin_of(solid, chord_mm);
  if (!mesh) return unmeshed(name, "a face has none");
  if (mesh->facets.empty() || !mesh->is_closed()) return unmeshed(name, "they do not close");
  return *std::move(mesh);
}

}  // namespace

double SkinMesh::volume_mm3() const {
  // About a corner of its own, so that digits are not lost far from the origin.
  const SpacePoint from = corners.empty() ? SpacePoint{} : corners.front();
  double sum = 0;
  for (const auto& [a, b, c] : facets) {
    sum += dot(corners[a] - from, cross(corners[b] - from, corners[c] - from));
  }
  return sum / 6;
}

bool SkinMesh::is_closed() const {
  std::vector<std::pair<std::uint32_t, std::uint32_t>> runs;
  runs.reserve(3 * facets.size());
  for (const auto& facet : facets) {
    for (std::size_t i = 0; i < 3; ++i) runs.emplace_back(facet[i], facet[(i + 1) % 3]);
  }
  std::sort(runs.begin(), runs.end());
  if (std::adjacent_find(runs.begin(), runs.end()) != runs.end()) return false;
  return std::all_of(runs.begin(), runs.end(), [&](const auto& run) {
    return std::binary_search(runs.begin(), runs.end(), std::pair{run.second, run.first});
  });
}

std::optional<SkinMesh> skin_of(const TopoDS_Shape& solid, double deflection_mm) {
  const TopoDS_Shape own = BRepBuilderAPI_Copy(solid, Standard_False, Standard_False).Shape();
  BRepMesh_IncrementalMesh mesher(own, deflection_mm, Standard_False, kAngle_rad, Standard_False);
  SkinMesh mesh;
  mesh.chord_mm = deflection_mm;
  CornerBook corners;
  for (TopExp_Explorer it(own, TopAbs_FACE); it.More(); it.Next()) {
    if (!add_face(TopoDS::Face(it.Current()), corners, mesh)) return std::nullopt;
  }
  mesh.corners = corners.take();
  return mesh;
}

Outcome<SkinMesh> mesh_of(const std::string& name, const TopoDS_Shape& solid, double chord_mm) {
  try {
    return meshed(name, solid, chord_mm);
  } catch (const Standard_Failure& failure) {
    return unmeshed(name, failure.GetMessageString());
  } catch (const std::bad_alloc&) {
    return unmeshed(name, "memory ran out");
  }
}

Outcome<SkinMesh> mesh_within(const std::string& name, const TopoDS_Shape& solid, double volume_mm3,
                              double share) {
  double chord = kFirstChord_mm;
  double off = 0;
  for (int i = 0; i < kTries && chord >= kLeastChord_mm; ++i) {
    auto mesh = mesh_of(name, solid, chord);
    if (mesh) {
      off = std::abs(mesh->volume_mm3() / volume_mm3 - 1);
      if (off <= share) return mesh;
    } else if (i + 1 == kTries) {
      return mesh.problem();
    }
    // The error goes with the chord.
    chord *= off > 0 ? std::clamp(0.7 * share / off, 0.1, 0.6) : 0.6;
  }
  return unmeshed(name, fmt::format("their volume is off by {:.2g}, {:g} is allowed", off, share));
}

}  // namespace prismwright
