#include "geometry/nearest_place.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>
#include <vector>

#include <BRepAdaptor_Curve.hxx>
#include <BRepAdaptor_Curve2d.hxx>
#include <BRepAdaptor_Surface.hxx>
#include <BRepTools.hxx>
#include <BRep_Tool.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
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
constexpr std::size_t kFollowed = 24;
constexpr double kLastStep_mm = 1e-7;
constexpr double kGain_mm =
    1e-8;  // a step that gains less is none: valleys between flats would be walked for ever
constexpr int kMostSteps = 150;
constexpr std::array<std::pair<int, int>, 8> kWays{
    {{-1, 0}, {1, 0}, {0, -1}, {0, 1}, {-1, -1}, {1, 1}, {-1, 1}, {1, -1}}};
constexpr double kHair = 1e-7;
constexpr int kStepsABound = 600;
constexpr double kOffFaceTest_mm = 6;  // cells smaller than this are given up when they lie off the face

// A piece of a curve (b unused) or of a face about its middle (a, b), with half widths and its reach in mm.
struct Cell {
  double a = 0;
  double b = 0;
  double half_a = 0;
  double half_b = 0;
  double reach_mm = 0;
  double distance_mm = 0;
  bool off_face = false;
};

// The parameters of a face within its edges; edges as polygons close enough that what lies between is on the
// edge, which is searched on its own.
class FaceBounds {
 public:
  explicit FaceBounds(const TopoDS_Face& face) : region_(RegionField::within(lines_of(face))) {
    double a0 = 0;
    double a1 = 0;
    BRepTools::UVBounds(face, a0, a1, low_b_, high_b_);
  }

  // Asked twice, a hair apart: where two edges meet they may miss each other by the last bits, and a look along
  // just that line would go between them.
  [[nodiscard]] bool hold(double a, double b) const {
    return region_.holds({a, b}) && region_.holds({a, b + kHair * (high_b_ - low_b_)});
  }

 private:
  static std::vector<std::vector<PlatePoint>> lines_of(const TopoDS_Face& face) {
    std::vector<std::vector<PlatePoint>> lines;
    // Not a map of edges: a seam bounds its face twice.
    for (TopExp_Explorer edges(face, TopAbs_EDGE); edges.More(); edges.Next()) {
      const BRepAdaptor_Curve2d curve(TopoDS::Edge(edges.Current()), face);
      const int steps = curve.GetType() == GeomAbs_Line ? 1 : kStepsABound;
      std::vector<PlatePoint> line;
      for (int i = 0; i <= steps; ++i) {
        const double share = static_cast<double>(i) / steps;
        const gp_Pnt2d p =
            curve.Value(curve.FirstParameter() + share * (curve.LastParameter() - curve.FirstParameter()));
        line.push_back({p.X(), p.Y()});
      }
      lines.push_back(std::move(line));
    }
    return lines;
  }

  RegionField region_;
  double low_b_ = 0;
  double high_b_ = 0;
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
    const FaceBounds bounds(face);
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

  Cell measured(const BRepAdaptor_Surface& surface, const FaceBounds& bounds, Cell cell) {
    gp_Pnt p;
    gp_Vec slope_a;
    gp_Vec slope_b;
    surface.D1(cell.a, cell.b, p, slope_a, slope_b);
    cell.reach_mm = kBound * (slope_a.Magnitude() * cell.half_a + slope_b.Magnitude() * cell.half_b);
    cell.distance_mm = part_.at(p).distance_mm;
    if (cell.distance_mm >= limit() - kGain_mm) return cell;
    if (bounds.hold(cell.a, cell.b)) {
      take(p);
    } else {
      cell.off_face = cell.reach_mm < kOffFaceTest_mm && lies_off(bounds, cell);
    }
    return cell;
  }

  // Edges are searched on their own, so what little of a face a cell may hold between these places is not lost.
  static bool lies_off(const FaceBounds& bounds, const Cell& cell) {
    for (const int side_a : {-1, 0, 1}) {
      for (const int side_b : {-1, 0, 1}) {
        if (bounds.hold(cell.a + side_a * cell.half_a, cell.b + side_b * cell.half_b)) return false;
      }
    }
    return true;
  }

  // Halves a face's cell across its longer way.
  void halve(const BRepAdaptor_Surface& surface, const FaceBounds& bounds, const Cell& cell,
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
        if (cell.off_face || cell.distance_mm - cell.reach_mm >= limit()) continue;
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
    for (int steps = 0; step > kLastStep_mm * per_mm && steps < kMostSteps; ++steps) {
      bool nearer = false;
      for (const double side : {-step, step}) {
        const double a = std::clamp(cell.a + side, curve.FirstParameter(), curve.LastParameter());
        const double there = take(curve.Value(a));
        if (there > cell.distance_mm - kGain_mm) continue;
        cell.distance_mm = there;
        cell.a = a;
        nearer = true;
        break;
      }
      if (!nearer) step /= 2;
    }
  }

  void follow(const BRepAdaptor_Surface& surface, const FaceBounds& bounds, Cell cell) {
    if (!bounds.hold(cell.a, cell.b)) return;
    double share = 1;
    for (int steps = 0; share * cell.reach_mm > kLastStep_mm && steps < kMostSteps; ++steps) {
      bool nearer = false;
      for (const auto& [side_a, side_b] : kWays) {
        const double a = cell.a + side_a * share * cell.half_a;
        const double b = cell.b + side_b * share * cell.half_b;
        const gp_Pnt p = surface.Value(a, b);
        const double there = part_.at(p).distance_mm;
        if (there > cell.distance_mm - kGain_mm || !bounds.hold(a, b)) continue;
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
