#include "geometry/mould_rim.h"

#include <algorithm>
#include <cmath>

#include <BRepAdaptor_Curve.hxx>
#include <BRepGProp_Face.hxx>
#include <BRepTools.hxx>
#include <BRep_Builder.hxx>
#include <BRep_Tool.hxx>
#include <Standard_Failure.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_DataMapOfShapeListOfShape.hxx>
#include <TopTools_IndexedDataMapOfShapeListOfShape.hxx>
#include <TopTools_ListOfShape.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Iterator.hxx>
#include <TopoDS_Wire.hxx>

namespace prismwright {

namespace {

constexpr int kLooks = 32;          ///< places looked at along an edge
constexpr double kLevel_mm = 1e-5;  ///< what departs less from a plane lies in it
constexpr double kUpright = 1e-5;   ///< a wall along the draw goes with what faces down
constexpr double kLeast = 0.5;      ///< cosine of the steepest leaning plane
constexpr double kBulgeShare = 0.125;

bool faces_up(const TopoDS_Face& face) {
  const BRepGProp_Face surface(face);
  double u0 = 0, u1 = 0, v0 = 0, v1 = 0;
  BRepTools::UVBounds(face, u0, u1, v0, v1);
  double sum = 0;
  for (int i = 0; i < 5; ++i) {
    for (int j = 0; j < 5; ++j) {
      gp_Pnt p;
      gp_Vec n;
      surface.Normal(u0 + (u1 - u0) * (i + 0.5) / 5, v0 + (v1 - v0) * (j + 0.5) / 5, p, n);
      if (n.Magnitude() > 1e-12) sum += n.Z() / n.Magnitude();
    }
  }
  return sum > kUpright;
}

std::vector<gp_Pnt> places_along(const TopoDS_Edge& edge) {
  const BRepAdaptor_Curve curve(edge);
  std::vector<gp_Pnt> places;
  for (int i = 0; i <= kLooks; ++i) {
    const double share = static_cast<double>(i) / kLooks;
    places.push_back(
        curve.Value(curve.FirstParameter() + share * (curve.LastParameter() - curve.FirstParameter())));
  }
  if (edge.Orientation() == TopAbs_REVERSED) std::reverse(places.begin(), places.end());
  return places;
}

/// Pieces that an edge is divided into, so that none bulges by more than the allowed in plan.
int pieces_of(const std::vector<gp_Pnt>& places, double bulge_mm) {
  double length = 0, turn = 0;
  for (std::size_t i = 0; i + 1 < places.size(); ++i) {
    const gp_XY step = gp_XY(places[i + 1].X() - places[i].X(), places[i + 1].Y() - places[i].Y());
    length += step.Modulus();
    if (i == 0) continue;
    const gp_XY before = gp_XY(places[i].X() - places[i - 1].X(), places[i].Y() - places[i - 1].Y());
    if (step.Modulus() > 1e-9 && before.Modulus() > 1e-9)
      turn += std::abs(std::atan2(before ^ step, before * step));
  }
  return std::max(1, static_cast<int>(std::ceil(std::sqrt(length * turn / 8 / bulge_mm))));
}

class RimMaker {
 public:
  RimMaker(const TopoDS_Shape& master, double strip_mm) : master_(master), strip_mm_(strip_mm) {}

  RimmedMaster make() {
    find_rim();
    chain();
    for (Chain& loop : chains_) {
      if (!loop.level) divide(loop);
    }
    rebuild_faces();
    for (const Chain& loop : chains_) add_loop(loop);
    std::stable_sort(result_.loops.begin(), result_.loops.end(),
                     [](const RimLoop& m, const RimLoop& n) { return m.hole < n.hole; });
    const auto outer = std::count_if(result_.loops.begin(), result_.loops.end(),
                                     [](const RimLoop& loop) { return !loop.hole; });
    if (outer != 1) throw Standard_Failure("its rim is not one closed line");
    return std::move(result_);
  }

 private:
  struct Chain {
    std::vector<TopoDS_Edge> edges;
    std::vector<gp_Pnt> places;
    bool level = false;
    gp_Pnt plane_place;
    gp_Dir plane_normal{0, 0, 1};
  };

  void find_rim() {
    TopTools_IndexedDataMapOfShapeListOfShape faces_of_edge;
    TopExp::MapShapesAndAncestors(master_, TopAbs_EDGE, TopAbs_FACE, faces_of_edge);
    for (TopExp_Explorer it(master_, TopAbs_FACE); it.More(); it.Next()) {
      const TopoDS_Face face = TopoDS::Face(it.Current());
      if (!faces_up(face)) continue;
      for (TopExp_Explorer edges(face, TopAbs_EDGE); edges.More(); edges.Next()) {
        const TopoDS_Edge edge = TopoDS::Edge(edges.Current());
        if (BRep_Tool::Degenerated(edge)) continue;
        for (const TopoDS_Shape& other : faces_of_edge.FindFromKey(edge)) {
          if (!other.IsSame(face) && !faces_up(TopoDS::Face(other))) rim_.push_back(edge);
        }
      }
    }
  }

  void chain() {
    while (!rim_.empty()) {
      Chain loop;
      loop.edges.push_back(rim_.back());
      rim_.pop_back();
      const TopoDS_Vertex start = TopExp::FirstVertex(loop.edges.front(), Standard_True);
      for (TopoDS_Vertex end = TopExp::LastVertex(loop.edges.back(), Standard_True); !end.IsSame(start);
           end = TopExp::LastVertex(loop.edges.back(), Standard_True)) {
        const auto next = std::find_if(rim_.begin(), rim_.end(), [&](const TopoDS_Edge& edge) {
          return TopExp::FirstVertex(edge, Standard_True).IsSame(end);
        });
        if (next == rim_.end()) throw Standard_Failure("its rim does not close");
        loop.edges.push_back(*next);
        rim_.erase(next);
      }
      for (const TopoDS_Edge& edge : loop.edges) {
        auto places = places_along(edge);
        places.pop_back();
        loop.places.insert(loop.places.end(), places.begin(), places.end());
      }
      lay_plane(loop);
      chains_.push_back(std::move(loop));
    }
  }

  static void lay_plane(Chain& loop) {
    gp_XYZ sum, area;
    for (const gp_Pnt& p : loop.places) sum += p.XYZ();
    sum /= static_cast<double>(loop.places.size());
    for (std::size_t i = 0; i < loop.places.size(); ++i) {
      const gp_Pnt& next = loop.places[(i + 1) % loop.places.size()];
      area += (loop.places[i].XYZ() - sum).Crossed(next.XYZ() - sum);
    }
    if (area.Modulus() < 1e-9) return;
    loop.plane_normal = gp_Dir(area.Z() < 0 ? area.Reversed() : area);
    loop.plane_place = gp_Pnt(sum);
    loop.level = loop.plane_normal.Z() > kLeast;
    for (const gp_Pnt& p : loop.places) {
      if (std::abs((p.XYZ() - sum) * loop.plane_normal.XYZ()) > kLevel_mm) loop.level = false;
    }
  }

  /// Divides the edges of a loop; the pieces carry the curves of the whole on both of its faces.
  void divide(const Chain& loop) {
    BRep_Builder builder;
    for (const TopoDS_Edge& turned : loop.edges) {
      const int count = pieces_of(places_along(turned), kBulgeShare * strip_mm_);
      if (count < 2) continue;
      const TopoDS_Edge edge = TopoDS::Edge(turned.Oriented(TopAbs_FORWARD));
      const BRepAdaptor_Curve curve(edge);
      const double a = curve.FirstParameter(), b = curve.LastParameter();
      TopTools_ListOfShape pieces;
      TopoDS_Vertex from = TopExp::FirstVertex(edge);
      for (int i = 0; i < count; ++i) {
        const double end = a + (b - a) * (i + 1) / count;
        TopoDS_Vertex to = TopExp::LastVertex(edge);
        if (i + 1 < count) builder.MakeVertex(to, curve.Value(end), BRep_Tool::Tolerance(edge));
        TopoDS_Edge piece = TopoDS::Edge(edge.EmptyCopied());
        builder.Add(piece, from.Oriented(TopAbs_FORWARD));
        builder.Add(piece, to.Oriented(TopAbs_REVERSED));
        builder.Range(piece, a + (b - a) * i / count, end);
        pieces.Append(piece);
        from = to;
      }
      pieces_.Bind(edge, pieces);
    }
  }

  std::vector<TopoDS_Edge> pieces(const TopoDS_Edge& edge) const {
    if (!pieces_.IsBound(edge)) return {edge};
    std::vector<TopoDS_Edge> all;
    for (const TopoDS_Shape& piece : pieces_.Find(edge))
      all.push_back(TopoDS::Edge(piece.Oriented(edge.Orientation())));
    if (edge.Orientation() == TopAbs_REVERSED) std::reverse(all.begin(), all.end());
    return all;
  }

  void rebuild_faces() {
    BRep_Builder builder;
    for (TopExp_Explorer it(master_, TopAbs_FACE); it.More(); it.Next()) {
      const TopoDS_Face face = TopoDS::Face(it.Current());
      const TopoDS_Shape forward = face.Oriented(TopAbs_FORWARD);
      TopoDS_Shape made = forward.EmptyCopied();
      for (TopoDS_Iterator wires(forward); wires.More(); wires.Next()) {
        TopoDS_Wire wire;
        builder.MakeWire(wire);
        for (TopoDS_Iterator edges(wires.Value().Oriented(TopAbs_FORWARD)); edges.More(); edges.Next()) {
          for (const TopoDS_Edge& piece : pieces(TopoDS::Edge(edges.Value()))) builder.Add(wire, piece);
        }
        wire.Closed(Standard_True);
        builder.Add(made, wire.Oriented(wires.Value().Orientation()));
      }
      made.Orientation(face.Orientation());
      (faces_up(face) ? result_.above : result_.below).push_back(TopoDS::Face(made));
    }
  }

  void add_loop(const Chain& chain) {
    RimLoop loop;
    double area = 0;
    for (std::size_t i = 0; i < chain.places.size(); ++i) {
      const gp_Pnt& p = chain.places[i];
      const gp_Pnt& q = chain.places[(i + 1) % chain.places.size()];
      area += p.X() * q.Y() - q.X() * p.Y();
    }
    loop.hole = area < 0;
    loop.places = chain.places;
    loop.level = chain.level;
    loop.plane_place = chain.plane_place;
    loop.plane_normal = chain.plane_normal;
    for (const TopoDS_Edge& whole : chain.edges) {
      for (const TopoDS_Edge& edge : pieces(whole)) {
        const TopoDS_Vertex from = TopExp::FirstVertex(edge, Standard_True),
                            to = TopExp::LastVertex(edge, Standard_True);
        loop.edges.push_back({edge, from, to, BRep_Tool::Pnt(from), BRep_Tool::Pnt(to)});
      }
    }
    result_.loops.push_back(std::move(loop));
  }

  const TopoDS_Shape& master_;
  double strip_mm_;
  std::vector<TopoDS_Edge> rim_;
  std::vector<Chain> chains_;
  TopTools_DataMapOfShapeListOfShape pieces_;
  RimmedMaster result_;
};

}  // namespace

RimmedMaster rimmed(const TopoDS_Shape& master, double strip_mm) { return RimMaker(master, strip_mm).make(); }

}  // namespace prismwright
