#include "geometry/nearest_place.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include <BRepAdaptor_Curve.hxx>
#include <BRepAdaptor_Surface.hxx>
#include <BRepTools.hxx>
#include <BRepTopAdaptor_FClass2d.hxx>
#include <BRep_Tool.hxx>
#include <TopExp.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS.hxx>
#include <gp_Pnt2d.hxx>
#include <gp_Vec.hxx>

namespace prismwright {
namespace {

constexpr int kFirstSteps = 16;
constexpr int kFirstAcross = 6;
constexpr double kBound = 1.1;  // cells are a little larger than their middle's slopes say
constexpr int kMostHalvings = 14;
constexpr std::size_t kFollowed = 6;
constexpr double kLastStep_mm = 1e-8;
constexpr double kOutsideTest_mm = 2;  // cells smaller than this are given up when they lie off the face

// A piece of a curve (b unused) or of a face about its middle (a, b), with half widths and its reach in mm.
struct Cell {
  double a = 0;
  double b = 0;
  double half_a = 0;
  double half_b = 0;
  double reach_mm = 0;
  double distance_mm = 0;
};

class Search {
 public:
  Search(const RoomField& part, double cell_mm, const std::function<bool(const gp_Pnt&)>& may_count)
      : part_(part), cell_mm_(cell_mm), may_count_(may_count) {}

  void along(const TopoDS_Edge& edge) {
    const BRepAdaptor_Curve curve(edge);
    const double from = curve.FirstParameter();
    const double step = (curve.LastParameter() - from) / kFirstSteps;
    std::vector<Cell> cells;
    for (int i = 0; i < kFirstSteps; ++i) cells.push_back(measured(curve, from + (i + 0.5) * step, step / 2));
    take(curve.Value(from));
    take(curve.Value(curve.LastParameter()));
    const auto last = halved(std::move(cells), [&](const Cell& cell, std::vector<Cell>& parts) {
      const double half = cell.half_a / 2;
      parts.push_back(measured(curve, cell.a - half, half));
      parts.push_back(measured(curve, cell.a + half, half));
    });
    for (const Cell& cell : last) follow(curve, cell);
  }

  void over(const TopoDS_Face& face) {
    const BRepAdaptor_Surface surface(face, false);
    const BRepTopAdaptor_FClass2d bounds(face, 1e-9);
    double a0 = 0;
    double a1 = 0;
    double b0 = 0;
    double b1 = 0;
    BRepTools::UVBounds(face, a0, a1, b0, b1);
    const double half_a = (a1 - a0) / kFirstSteps / 2;
    const double half_b = (b1 - b0) / kFirstAcross / 2;
    std::vector<Cell> cells;
    for (int i = 0; i < kFirstSteps; ++i) {
      for (int k = 0; k < kFirstAcross; ++k) {
        cells.push_back(
            measured(surface, bounds, {a0 + (2 * i + 1) * half_a, b0 + (2 * k + 1) * half_b, half_a, half_b}));
      }
    }
    const auto last = halved(std::move(cells), [&](const Cell& cell, std::vector<Cell>& parts) {
      if (cell.reach_mm < kOutsideTest_mm && lies_off(bounds, cell)) return;
      halve(surface, bounds, cell, parts);
    });
    for (const Cell& cell : last) follow(surface, bounds, cell);
  }

  [[nodiscard]] std::optional<NearestPlace> best() const {
    std::optional<NearestPlace> found = best_;
    if (found) found->least_mm = least_mm_;
    return found;
  }

 private:
  [[nodiscard]] double limit() const { return best_ ? best_->distance_mm : std::numeric_limits<double>::max(); }

  double take(const gp_Pnt& p) {
    const RoomField::Hit hit = part_.at(p);
    least_mm_ = std::min(least_mm_, hit.distance_mm);
    if (hit.distance_mm < limit() && (!may_count_ || may_count_(hit.foot))) {
      best_ = NearestPlace{hit.distance_mm, p, hit.foot, 0};
    }
    return hit.distance_mm;
  }

  Cell measured(const BRepAdaptor_Curve& curve, double a, double half_a) {
    gp_Pnt p;
    gp_Vec slope;
    curve.D1(a, p, slope);
    return {a, 0, half_a, 0, kBound * slope.Magnitude() * half_a, take(p)};
  }

  Cell measured(const BRepAdaptor_Surface& surface, const BRepTopAdaptor_FClass2d& bounds, Cell cell) {
    gp_Pnt p;
    gp_Vec slope_a;
    gp_Vec slope_b;
    surface.D1(cell.a, cell.b, p, slope_a, slope_b);
    cell.reach_mm = kBound * (slope_a.Magnitude() * cell.half_a + slope_b.Magnitude() * cell.half_b);
    cell.distance_mm = part_.at(p).distance_mm;
    if (cell.distance_mm < limit() && on_face(bounds, cell.a, cell.b)) take(p);
    return cell;
  }

  static bool on_face(const BRepTopAdaptor_FClass2d& bounds, double a, double b) {
    return bounds.Perform(gp_Pnt2d(a, b)) != TopAbs_OUT;
  }

  static bool lies_off(const BRepTopAdaptor_FClass2d& bounds, const Cell& cell) {
    if (on_face(bounds, cell.a, cell.b)) return false;
    for (const double side_a : {-1, 1}) {
      for (const double side_b : {-1, 1}) {
        if (on_face(bounds, cell.a + side_a * cell.half_a, cell.b + side_b * cell.half_b)) return false;
      }
    }
    return true;
  }

  // Halves a face's cell across its longer way.
  void halve(const BRepAdaptor_Surface& surface, const BRepTopAdaptor_FClass2d& bounds, const Cell& cell,
             std::vector<Cell>& parts) {
    gp_Pnt p;
    gp_Vec slope_a;
    gp_Vec slope_b;
    surface.D1(cell.a, cell.b, p, slope_a, slope_b);
    const bool along_a = slope_a.Magnitude() * cell.half_a > slope_b.Magnitude() * cell.half_b;
    for (const double side : {-0.5, 0.5}) {
      Cell part = cell;
      if (along_a) {
        part.half_a /= 2;
        part.a += side * cell.half_a;
      } else {
        part.half_b /= 2;
        part.b += side * cell.half_b;
      }
      parts.push_back(measured(surface, bounds, part));
    }
  }

  // Halves what may still hold a nearer place, down to the cell size; gives the most promising last cells.
  template <class Halve>
  std::vector<Cell> halved(std::vector<Cell> cells, Halve halve_one) {
    std::vector<Cell> last;
    for (int round = 0; round < kMostHalvings && !cells.empty(); ++round) {
      std::vector<Cell> parts;
      for (const Cell& cell : cells) {
        if (cell.distance_mm - cell.reach_mm >= limit()) continue;
        if (cell.reach_mm <= cell_mm_) {
          last.push_back(cell);
        } else {
          halve_one(cell, parts);
        }
      }
      cells = std::move(parts);
    }
    last.insert(last.end(), cells.begin(), cells.end());
    const std::size_t kept = std::min(kFollowed, last.size());
    std::partial_sort(last.begin(), last.begin() + static_cast<std::ptrdiff_t>(kept), last.end(),
                      [](const Cell& x, const Cell& y) { return x.distance_mm < y.distance_mm; });
    last.resize(kept);
    return last;
  }

  // Steps to whichever side is nearer, halving the step when neither is.
  void follow(const BRepAdaptor_Curve& curve, Cell cell) {
    const double per_mm = cell.half_a / std::max(cell.reach_mm, kLastStep_mm);
    double step = cell.half_a;
    while (step > kLastStep_mm * per_mm) {
      bool nearer = false;
      for (const double side : {-step, step}) {
        const double a = std::clamp(cell.a + side, curve.FirstParameter(), curve.LastParameter());
        const double there = take(curve.Value(a));
        if (there >= cell.distance_mm) continue;
        cell.distance_mm = there;
        cell.a = a;
        nearer = true;
        break;
      }
      if (!nearer) step /= 2;
    }
  }

  void follow(const BRepAdaptor_Surface& surface, const BRepTopAdaptor_FClass2d& bounds, Cell cell) {
    if (!on_face(bounds, cell.a, cell.b)) return;
    double share = 1;
    while (share * cell.reach_mm > kLastStep_mm) {
      bool nearer = false;
      for (const auto& [side_a, side_b] :
           {std::pair(-1, 0), std::pair(1, 0), std::pair(0, -1), std::pair(0, 1)}) {
        const double a = cell.a + side_a * share * cell.half_a;
        const double b = cell.b + side_b * share * cell.half_b;
        const gp_Pnt p = surface.Value(a, b);
        const double there = part_.at(p).distance_mm;
        if (there >= cell.distance_mm || !on_face(bounds, a, b)) continue;
        take(p);
        cell.distance_mm = there;
        cell.a = a;
        cell.b = b;
        nearer = true;
        break;
      }
      if (!nearer) share /= 2;
    }
  }

  const RoomField& part_;
  double cell_mm_;
  const std::function<bool(const gp_Pnt&)>& may_count_;
  std::optional<NearestPlace> best_;
  double least_mm_ = std::numeric_limits<double>::max();
};

}  // namespace

std::optional<NearestPlace> nearest_place(const TopoDS_Shape& solid, const RoomField& part, double cell_mm,
                                          const std::function<bool(const gp_Pnt& foot)>& may_count) {
  Search search(part, cell_mm, may_count);
  TopTools_IndexedMapOfShape edges;
  TopExp::MapShapes(solid, TopAbs_EDGE, edges);
  for (int i = 1; i <= edges.Extent(); ++i) {
    if (!BRep_Tool::Degenerated(TopoDS::Edge(edges(i)))) search.along(TopoDS::Edge(edges(i)));
  }
  // The edges give a close limit at small cost; faces are halved against it.
  TopTools_IndexedMapOfShape faces;
  TopExp::MapShapes(solid, TopAbs_FACE, faces);
  for (int i = 1; i <= faces.Extent(); ++i) search.over(TopoDS::Face(faces(i)));
  return search.best();
}

}  // namespace prismwright
