#include "geometry/print_search.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include <BRepAdaptor_Surface.hxx>
#include <BRepBuilderAPI_Copy.hxx>
#include <BRepLProp_SLProps.hxx>
#include <BRepMesh_IncrementalMesh.hxx>
#include <BRep_Tool.hxx>
#include <Poly_Triangulation.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>

#include "core/base/angle.h"

namespace prismwright {

namespace {

constexpr double kChord_mm = 0.1;    ///< that the solid may bulge over its places
constexpr int kDirections = 1200;    ///< over half a sphere: about 4 deg apart
constexpr double kLike = 1.02;       ///< mean steps within this count as alike
constexpr double kLikeLevel = 0.01;  ///< and within this share of a layer
constexpr int kTurns = 60;           ///< of the foot in the printer, over half a turn

struct FootPoint {
  double x = 0;
  double y = 0;
};

double turn_of(FootPoint o, FootPoint a, FootPoint b) {
  return (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);
}

/// Convex outline of places, by the monotone chain.
std::vector<FootPoint> hull_of(std::vector<FootPoint> points) {
  std::sort(points.begin(), points.end(),
            [](FootPoint a, FootPoint b) { return a.x < b.x || (a.x == b.x && a.y < b.y); });
  std::vector<FootPoint> hull;
  for (int side = 0; side < 2; ++side) {
    const std::size_t start = hull.size();
    for (const FootPoint p : points) {
      while (hull.size() >= start + 2 && turn_of(hull[hull.size() - 2], hull.back(), p) <= 0) hull.pop_back();
      hull.push_back(p);
    }
    hull.pop_back();
    std::reverse(points.begin(), points.end());
  }
  return hull;
}

struct FootBox {
  double low_x = std::numeric_limits<double>::infinity();
  double low_y = std::numeric_limits<double>::infinity();
  double high_x = -std::numeric_limits<double>::infinity();
  double high_y = -std::numeric_limits<double>::infinity();
};

FootBox box_of(const std::vector<FootPoint>& hull, double angle) {
  FootBox box;
  const double c = std::cos(angle);
  const double s = std::sin(angle);
  for (const FootPoint p : hull) {
    const double x = c * p.x + s * p.y;
    const double y = c * p.y - s * p.x;
    box.low_x = std::min(box.low_x, x - kChord_mm);
    box.high_x = std::max(box.high_x, x + kChord_mm);
    box.low_y = std::min(box.low_y, y - kChord_mm);
    box.high_y = std::max(box.high_y, y + kChord_mm);
  }
  return box;
}

/// Two unit vectors that make a frame with `up`.
SpaceFrame frame_on(SpaceVector up) {
  const SpaceVector help = std::abs(up.x) < 0.7 ? SpaceVector{1, 0, 0} : SpaceVector{0, 1, 0};
  const SpaceVector second = unit(cross(up, help));
  return {{0, 0, 0}, cross(second, up), second, up};
}

}  // namespace

PrintSearch::PrintSearch(const TopoDS_Shape& solid, const std::vector<MasterFace>& faces) {
  const TopoDS_Shape own = BRepBuilderAPI_Copy(solid, Standard_False, Standard_False).Shape();
  BRepMesh_IncrementalMesh mesher(own, kChord_mm, Standard_False, 0.2, Standard_False);
  std::size_t number = 0;
  for (TopExp_Explorer it(own, TopAbs_FACE); it.More(); it.Next(), ++number) take_face(it.Current(), number);
  for (const SkinSample& sample : samples_) {
    if (sample.face >= faces.size() || !faces[sample.face].optical) continue;
    optical_.push_back(sample);
    optical_mm2_ += sample.area_mm2;
  }
}

void PrintSearch::take_face(const TopoDS_Shape& shape, std::size_t number) {
  const TopoDS_Face& face = TopoDS::Face(shape);
  TopLoc_Location where;
  const Handle(Poly_Triangulation) mesh = BRep_Tool::Triangulation(face, where);
  if (mesh.IsNull()) return;
  const BRepAdaptor_Surface surface(face, Standard_False);
  const double side = face.Orientation() == TopAbs_REVERSED ? -1 : 1;
  for (int i = 1; i <= mesh->NbNodes(); ++i) {
    const gp_Pnt p = mesh->Node(i).Transformed(where.Transformation());
    places_.push_back({p.X(), p.Y(), p.Z()});
  }
  for (int i = 1; i <= mesh->NbTriangles(); ++i) {
    int a = 0, b = 0, c = 0;
    mesh->Triangle(i).Get(a, b, c);
    const gp_Vec u(mesh->Node(a), mesh->Node(b));
    const gp_Vec v(mesh->Node(a), mesh->Node(c));
    const double area = u.Crossed(v).Magnitude() / 2;
    const gp_XY at = (mesh->UVNode(a).XY() + mesh->UVNode(b).XY() + mesh->UVNode(c).XY()) / 3;
    BRepLProp_SLProps there(surface, at.X(), at.Y(), 1, 1e-9);
    if (area <= 0 || !there.IsNormalDefined()) continue;
    const gp_Dir n = there.Normal();
    samples_.push_back({{side * n.X(), side * n.Y(), side * n.Z()}, area, number});
  }
}

std::vector<SpaceVector> PrintSearch::directions() const {
  std::vector<SpaceVector> all;
  // Golden-angle spiral over the upper half.
  const double golden = kPi * (3 - std::sqrt(5.0));
  for (int i = 0; i < kDirections; ++i) {
    const double z = (i + 0.5) / kDirections;
    const double r = std::sqrt(1 - z * z);
    all.push_back({r * std::cos(golden * i), r * std::sin(golden * i), z});
  }
  // Square to a face, and along two faces at once.
  std::vector<SpaceVector> faces;
  for (const SkinSample& sample : samples_) {
    const bool known = std::any_of(faces.begin(), faces.end(), [&](const SpaceVector& n) {
      return std::abs(dot(n, sample.normal)) > 0.9995;
    });
    if (!known && faces.size() < 24) faces.push_back(sample.normal);
  }
  for (std::size_t i = 0; i < faces.size(); ++i) {
    all.push_back(faces[i]);
    for (std::size_t k = 0; k < i; ++k) all.push_back(unit(cross(faces[i], faces[k])));
  }
  return all;
}

double PrintSearch::level_of(SpaceVector up) const {
  double sum = 0;
  for (const SkinSample& sample : optical_) sum += sample.area_mm2 * std::abs(dot(sample.normal, up));
  return optical_mm2_ > 0 ? sum / optical_mm2_ : 0;
}

std::optional<FoundLay> PrintSearch::fitted(SpaceVector up, double level, const PrintRoom& room) const {
  FoundLay found;
  found.frame = frame_on(up);
  found.level = level;
  double low = std::numeric_limits<double>::infinity();
  double high = -low;
  for (const SpacePoint& p : places_) {
    const double z = dot(p - SpacePoint{}, up);
    low = std::min(low, z);
    high = std::max(high, z);
  }
  found.low_z_mm = low - kChord_mm;
  found.height_mm = high - low + 2 * kChord_mm;
  if (found.height_mm > room.height_mm) return std::nullopt;
  std::vector<FootPoint> foot;
  foot.reserve(places_.size());
  for (const SpacePoint& p : places_) {
    const SpacePoint own = found.frame.into(p);
    foot.push_back({own.x, own.y});
  }
  const std::vector<FootPoint> hull = hull_of(std::move(foot));
  double least = std::numeric_limits<double>::infinity();
  double turn = 0;
  for (int i = 0; i < kTurns; ++i) {
    const double angle = kPi * i / kTurns;
    const FootBox box = box_of(hull, angle);
    const double width = box.high_x - box.low_x;
    const double depth = box.high_y - box.low_y;
    if (width > room.width_mm || depth > room.depth_mm || width * depth >= least) continue;
    least = width * depth;
    turn = angle;
    found.low_x_mm = box.low_x;
    found.low_y_mm = box.low_y;
    found.width_mm = width;
    found.depth_mm = depth;
  }
  if (!(least < std::numeric_limits<double>::infinity())) return std::nullopt;
  const SpaceFrame flat = found.frame;
  found.frame.first = std::cos(turn) * flat.first + std::sin(turn) * flat.second;
  found.frame.second = std::cos(turn) * flat.second - std::sin(turn) * flat.first;
  return found;
}

FoundLay PrintSearch::followed(FoundLay found, const PrintRoom& room) const {
  for (double step = radians(3); step > radians(0.05);) {
    bool better = false;
    for (int i = 0; i < 8; ++i) {
      const double way = 2 * kPi * i / 8;
      const SpaceVector aside = std::cos(way) * found.frame.first + std::sin(way) * found.frame.second;
      const SpaceVector up = unit(found.frame.third + std::tan(step) * aside);
      const double level = level_of(up);
      if (level >= found.level) continue;
      if (const auto next = fitted(up, level, room)) {
        found = *next;
        better = true;
        break;
      }
    }
    if (!better) step /= 2;
  }
  return found;
}

std::optional<FoundLay> PrintSearch::best(const PrintRoom& room) const {
  struct Try {
    SpaceVector up;
    double level;
  };
  std::vector<Try> tries;
  for (const SpaceVector& up : directions()) tries.push_back({up, level_of(up)});
  std::stable_sort(tries.begin(), tries.end(), [](const Try& a, const Try& b) { return a.level < b.level; });
  std::optional<FoundLay> found;
  double limit = std::numeric_limits<double>::infinity();
  for (const Try& next : tries) {
    if (next.level > limit) break;
    const auto here = fitted(next.up, next.level, room);
    if (!here) continue;
    if (!found) {
      found = followed(*here, room);
      limit = std::max(kLike * found->level, found->level + kLikeLevel);
    }
    if (here->level <= limit && here->height_mm < found->height_mm) found = here;
  }
  return found;
}

}  // namespace prismwright
