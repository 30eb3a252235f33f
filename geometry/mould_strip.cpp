#include <algorithm>
#include <cmath>
#include <vector>

#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRep_Builder.hxx>
#include <BRep_Tool.hxx>
#include <Geom2d_BSplineCurve.hxx>
#include <Geom2d_Line.hxx>
#include <Geom_BSplineSurface.hxx>
#include <Geom_Curve.hxx>
#include <Standard_Failure.hxx>
#include <TColStd_Array1OfInteger.hxx>
#include <TColStd_Array1OfReal.hxx>
#include <TColgp_Array1OfPnt2d.hxx>
#include <TColgp_Array2OfPnt.hxx>
#include <TopExp.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Wire.hxx>

#include "geometry/mould_sheet.h"

namespace prismwright {

namespace {

constexpr double kFollows_mm = 2e-6;  ///< how closely a strip follows the curve of its rim edge
constexpr int kMostSpans = 256;
constexpr double kLeastTolerance_mm = 1e-7;

/// A curve as a chain of cubics through its points and slopes, in its own parameter.
struct Cubics {
  std::vector<gp_Pnt> poles;
  std::vector<double> at;  ///< the parameter that belongs to each pole
  int spans = 1;
  double error_mm = 0;
};

Cubics cubics_of(const Handle(Geom_Curve) & curve, double a, double b, int spans) {
  Cubics cubics;
  cubics.spans = spans;
  const double h = (b - a) / spans;
  gp_Pnt from, to;
  gp_Vec slope, next;
  curve->D1(a, from, slope);
  cubics.poles.push_back(from);
  cubics.at.push_back(a);
  for (int i = 0; i < spans; ++i) {
    const double t = a + i * h;
    curve->D1(t + h, to, next);
    const gp_XYZ one = from.XYZ() + slope.XYZ() * (h / 3), two = to.XYZ() - next.XYZ() * (h / 3);
    cubics.poles.insert(cubics.poles.end(), {gp_Pnt(one), gp_Pnt(two)});
    cubics.at.insert(cubics.at.end(), {t + h / 3, t + h - h / 3});
    for (const double s : {0.25, 0.5, 0.75}) {
      const double r = 1 - s;
      const gp_XYZ here =
          from.XYZ() * (r * r * r) + one * (3 * r * r * s) + two * (3 * r * s * s) + to.XYZ() * (s * s * s);
      cubics.error_mm = std::max(cubics.error_mm, (curve->Value(t + s * h).XYZ() - here).Modulus());
    }
    from = to;
    slope = next;
  }
  cubics.poles.push_back(to);
  cubics.at.push_back(b);
  return cubics;
}

Cubics close_cubics(const Handle(Geom_Curve) & curve, double a, double b) {
  int spans = 1;
  Cubics cubics = cubics_of(curve, a, b, spans);
  while (cubics.error_mm > kFollows_mm && spans < kMostSpans) cubics = cubics_of(curve, a, b, spans *= 2);
  return cubics;
}

/// Ruled from the curve (v = 0) to the straight line between two places (v = 1), in the curve's parameter.
Handle(Geom_BSplineSurface)
    ruled(const Cubics& cubics, double a, double b, const gp_Pnt& first, const gp_Pnt& last) {
  const int count = static_cast<int>(cubics.poles.size());
  TColgp_Array2OfPnt poles(1, count, 1, 2);
  for (int i = 1; i <= count; ++i) {
    const double share = (cubics.at[std::size_t(i - 1)] - a) / (b - a);
    poles(i, 1) = cubics.poles[std::size_t(i - 1)];
    poles(i, 2) = gp_Pnt(first.XYZ() * (1 - share) + last.XYZ() * share);
  }
  TColStd_Array1OfReal along(1, cubics.spans + 1), across(1, 2);
  TColStd_Array1OfInteger along_count(1, cubics.spans + 1), across_count(1, 2);
  for (int i = 0; i <= cubics.spans; ++i) {
    along(i + 1) = i == cubics.spans ? b : a + (b - a) * i / cubics.spans;
    along_count(i + 1) = i == 0 || i == cubics.spans ? 4 : 2;
  }
  across(1) = 0;
  across(2) = 1;
  across_count.Init(2);
  return new Geom_BSplineSurface(poles, along, across, along_count, across_count, 3, 1);
}

/// Lays a straight edge on a face as the straight line between two places of its parameters.
void lay_on(const TopoDS_Edge& edge, const TopoDS_Face& face, gp_Pnt2d start, gp_Pnt2d end) {
  if (edge.Orientation() == TopAbs_REVERSED) std::swap(start, end);
  double a = 0, b = 0;
  BRep_Tool::Range(edge, a, b);
  TColgp_Array1OfPnt2d poles(1, 2);
  poles(1) = start;
  poles(2) = end;
  TColStd_Array1OfReal knots(1, 2);
  knots(1) = a;
  knots(2) = b;
  TColStd_Array1OfInteger counts(1, 2);
  counts.Init(2);
  BRep_Builder().UpdateEdge(edge, new Geom2d_BSplineCurve(poles, knots, counts, 1), face, kLeastTolerance_mm);
}

}  // namespace

int SharedEdges::add(const gp_Pnt& place) {
  TopoDS_Vertex vertex;
  BRep_Builder().MakeVertex(vertex, place, kLeastTolerance_mm);
  places_.push_back(place);
  vertices_.push_back(vertex);
  return static_cast<int>(places_.size()) - 1;
}

int SharedEdges::add(const TopoDS_Vertex& vertex) {
  places_.push_back(BRep_Tool::Pnt(vertex));
  vertices_.push_back(vertex);
  return static_cast<int>(places_.size()) - 1;
}

TopoDS_Edge SharedEdges::edge(int from, int to) {
  const std::pair<int, int> key = std::minmax(from, to);
  auto at = edges_.find(key);
  if (at == edges_.end()) {
    BRepBuilderAPI_MakeEdge maker(TopoDS::Vertex(vertex(key.first).Oriented(TopAbs_FORWARD)),
                                  TopoDS::Vertex(vertex(key.second).Oriented(TopAbs_FORWARD)));
    if (!maker.IsDone()) throw Standard_Failure("two corners of the parting fall together");
    at = edges_.emplace(key, maker.Edge()).first;
  }
  return TopoDS::Edge(at->second.Oriented(from < to ? TopAbs_FORWARD : TopAbs_REVERSED));
}

TopoDS_Face SharedEdges::flat_face(const std::vector<int>& walk, const gp_Pln& plane) {
  BRep_Builder builder;
  TopoDS_Wire wire;
  builder.MakeWire(wire);
  for (std::size_t i = 0; i < walk.size(); ++i) builder.Add(wire, edge(walk[i], walk[(i + 1) % walk.size()]));
  wire.Closed(Standard_True);
  return BRepBuilderAPI_MakeFace(plane, wire, Standard_False).Face();
}

TopoDS_Face strip_face(const RimEdge& rim, int from, int to, int outer_from, int outer_to, SharedEdges& edges) {
  const bool forward = rim.edge.Orientation() == TopAbs_FORWARD;
  if (!forward) {
    std::swap(from, to);
    std::swap(outer_from, outer_to);
  }
  const TopoDS_Edge own = TopoDS::Edge(rim.edge.Oriented(TopAbs_FORWARD));
  double a = 0, b = 0;
  const Handle(Geom_Curve) curve = BRep_Tool::Curve(own, a, b);
  const Cubics cubics = close_cubics(curve, a, b);
  BRep_Builder builder;
  TopoDS_Face face;
  builder.MakeFace(face, ruled(cubics, a, b, edges.place(outer_from), edges.place(outer_to)),
                   kLeastTolerance_mm);
  builder.UpdateEdge(own, new Geom2d_Line(gp_Pnt2d(0, 0), gp_Dir2d(1, 0)), face,
                     std::max(BRep_Tool::Tolerance(own), 2 * cubics.error_mm));
  const TopoDS_Edge last = edges.edge(to, outer_to), outer = edges.edge(outer_to, outer_from),
                    first = edges.edge(outer_from, from);
  lay_on(last, face, {b, 0}, {b, 1});
  lay_on(outer, face, {b, 1}, {a, 1});
  lay_on(first, face, {a, 1}, {a, 0});
  TopoDS_Wire wire;
  builder.MakeWire(wire);
  for (const TopoDS_Edge& edge : {own, last, outer, first}) builder.Add(wire, edge);
  wire.Closed(Standard_True);
  builder.Add(face, wire);
  // Along the rim and outward: that turns downward where the rim is walked forward.
  face.Orientation(forward ? TopAbs_REVERSED : TopAbs_FORWARD);
  return face;
}

}  // namespace prismwright
