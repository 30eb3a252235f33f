#include "geometry/mould_plan.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakePolygon.hxx>
#include <BRepMesh_IncrementalMesh.hxx>
#include <BRep_Tool.hxx>
#include <Poly_Triangulation.hxx>
#include <Standard_Failure.hxx>
#include <TopLoc_Location.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Wire.hxx>
#include <gp_Pln.hxx>

namespace prismwright {

namespace {

constexpr double kSame_mm = 1e-6;

double side(const gp_XY& a, const gp_XY& b, const gp_XY& p) { return (b - a) ^ (p - a); }

TopoDS_Wire wire_of(const std::vector<gp_XY>& polygon) {
  BRepBuilderAPI_MakePolygon maker;
  for (const gp_XY& p : polygon) maker.Add(gp_Pnt(p.X(), p.Y(), 0));
  maker.Close();
  return maker.Wire();
}

int nearest(const std::vector<gp_XY>& places, const gp_XY& p) {
  int best = 0;
  for (std::size_t i = 1; i < places.size(); ++i) {
    if ((places[i] - p).SquareModulus() < (places[std::size_t(best)] - p).SquareModulus())
      best = static_cast<int>(i);
  }
  if ((places[std::size_t(best)] - p).Modulus() > kSame_mm)
    throw Standard_Failure("the parting was given new corners");
  return best;
}

}  // namespace

bool stretches_meet(const gp_XY& a, const gp_XY& b, const gp_XY& c, const gp_XY& d) {
  if (std::max(a.X(), b.X()) < std::min(c.X(), d.X()) || std::max(c.X(), d.X()) < std::min(a.X(), b.X()))
    return false;
  if (std::max(a.Y(), b.Y()) < std::min(c.Y(), d.Y()) || std::max(c.Y(), d.Y()) < std::min(a.Y(), b.Y()))
    return false;
  return side(a, b, c) * side(a, b, d) <= 0 && side(c, d, a) * side(c, d, b) <= 0;
}

bool meets_itself(const std::vector<gp_XY>& polygon) {
  const std::size_t n = polygon.size();
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t k = i + 2; k < n; ++k) {
      if (i == 0 && k + 1 == n) continue;
      if (stretches_meet(polygon[i], polygon[i + 1], polygon[k], polygon[(k + 1) % n])) return true;
    }
  }
  return false;
}

bool polygons_meet(const std::vector<gp_XY>& one, const std::vector<gp_XY>& other) {
  for (std::size_t i = 0; i < one.size(); ++i) {
    for (std::size_t k = 0; k < other.size(); ++k) {
      if (stretches_meet(one[i], one[(i + 1) % one.size()], other[k], other[(k + 1) % other.size()]))
        return true;
    }
  }
  return false;
}

double area_of(const std::vector<gp_XY>& polygon) {
  double sum = 0;
  for (std::size_t i = 0; i < polygon.size(); ++i) sum += polygon[i] ^ polygon[(i + 1) % polygon.size()];
  return sum / 2;
}

bool is_within(const std::vector<gp_XY>& polygon, const gp_XY& place) {
  bool within = false;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const gp_XY& a = polygon[i];
    const gp_XY& b = polygon[(i + 1) % polygon.size()];
    if ((a.Y() > place.Y()) == (b.Y() > place.Y())) continue;
    if (place.X() < a.X() + (place.Y() - a.Y()) / (b.Y() - a.Y()) * (b.X() - a.X())) within = !within;
  }
  return within;
}

double distance_from(const std::vector<gp_XY>& polygon, const gp_XY& place) {
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const gp_XY& a = polygon[i];
    const gp_XY along = polygon[(i + 1) % polygon.size()] - a;
    const double square = std::max(1e-18, along.SquareModulus());
    const double share = std::clamp((place - a) * along / square, 0.0, 1.0);
    least = std::min(least, (place - a - along * share).Modulus());
  }
  return least;
}

std::vector<std::array<int, 3>> triangles_between(const std::vector<gp_XY>& outline,
                                                  const std::vector<gp_XY>& hole) {
  BRepBuilderAPI_MakeFace maker(gp_Pln(gp::Origin(), gp::DZ()), wire_of(outline), Standard_False);
  if (!hole.empty()) {
    auto turned = hole;
    if (area_of(turned) > 0) std::reverse(turned.begin(), turned.end());
    maker.Add(wire_of(turned));
  }
  const TopoDS_Face face = maker.Face();
  const double size = std::sqrt(std::abs(area_of(outline)));
  BRepMesh_IncrementalMesh mesher(face, 0.1 * size, Standard_False, 0.5, Standard_False);
  TopLoc_Location place;
  const Handle(Poly_Triangulation) mesh = BRep_Tool::Triangulation(face, place);
  if (mesh.IsNull()) throw Standard_Failure("the parting could not be divided");
  std::vector<gp_XY> corners = outline;
  corners.insert(corners.end(), hole.begin(), hole.end());
  std::vector<int> index;
  for (int i = 1; i <= mesh->NbNodes(); ++i)
    index.push_back(nearest(corners, {mesh->Node(i).X(), mesh->Node(i).Y()}));
  std::vector<std::array<int, 3>> triangles;
  double area = 0;
  for (int i = 1; i <= mesh->NbTriangles(); ++i) {
    std::array<int, 3> n{};
    mesh->Triangle(i).Get(n[0], n[1], n[2]);
    for (int& k : n) k = index[std::size_t(k - 1)];
    const double twice =
        side(corners[std::size_t(n[0])], corners[std::size_t(n[1])], corners[std::size_t(n[2])]);
    if (twice < 0) std::swap(n[1], n[2]);
    area += std::abs(twice) / 2;
    triangles.push_back(n);
  }
  const double wanted = std::abs(area_of(outline)) - std::abs(hole.empty() ? 0 : area_of(hole));
  if (std::abs(area - wanted) > 1e-6 * wanted) throw Standard_Failure("the parting is not wholly divided");
  return triangles;
}

}  // namespace prismwright
