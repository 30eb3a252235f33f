#include "geometry/solid_form.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

#include <fmt/format.h>
#include <BRepAdaptor_Curve.hxx>
#include <BRepAdaptor_Curve2d.hxx>
#include <BRepAdaptor_Surface.hxx>
#include <BRepBndLib.hxx>
#include <BRepTools.hxx>
#include <BRepTools_WireExplorer.hxx>
#include <BRep_Tool.hxx>
#include <ElSLib.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS.hxx>

#include "core/frame/plate_step.h"

namespace prismwright {
namespace {

constexpr double kHair_mm = 1e-6;
constexpr double kBoundChord_mm = 1e-5;
constexpr int kBends = 8;  // pieces of a curve whose bend is looked at
constexpr int kLeastSteps = 2;
constexpr int kMostSteps = 200;
constexpr double kSameScale = 1e-9;
constexpr double kBehind_mm = 2e-5;  // outlines are kept to 1e-5 mm
constexpr double kCapChord_mm = 1e-5;
constexpr int kMostCapSteps = 400;
constexpr int kSamplesAlong = 12;

template <class Take>
void each_of(const TopoDS_Shape& shape, TopAbs_ShapeEnum kind, Take take) {
  TopTools_IndexedMapOfShape found;
  TopExp::MapShapes(shape, kind, found);
  for (int i = 1; i <= found.Extent(); ++i) take(found(i));
}

SolidForm::Ball ball_of(const TopoDS_Shape& piece) {
  Bnd_Box box;
  BRepBndLib::Add(piece, box);
  const gp_Pnt low = box.CornerMin();
  const gp_Pnt high = box.CornerMax();
  return {gp_Pnt((low.X() + high.X()) / 2, (low.Y() + high.Y()) / 2, (low.Z() + high.Z()) / 2),
          low.Distance(high) / 2};
}

// Speed of the parameters in the middle of the face: what makes a unit of each a millimetre or so.
void measure_speeds(SolidForm::FaceForm& form) {
  const BRepAdaptor_Surface surface(form.face, false);
  gp_Pnt p;
  gp_Vec slope_a;
  gp_Vec slope_b;
  surface.D1((form.low_a + form.high_a) / 2, (form.low_b + form.high_b) / 2, p, slope_a, slope_b);
  form.mm_per_a = std::max(slope_a.Magnitude(), 1e-9);
  form.mm_per_b = std::max(slope_b.Magnitude(), 1e-9);
}

// Straight steps along a curve, within kBoundChord_mm of it where it bends evenly over an eighth of its way.
template <class Value>
PlateChain chords_of(Value value, double first, double last) {
  double most = 0;
  for (int i = 0; i < kBends; ++i) {
    const auto at = [&](double eighths) { return value(first + (last - first) * (i + eighths) / kBends); };
    const PlatePoint middle = at(0.5);
    most = std::max(most, distance_to(straight_step(at(0), at(1)), middle));
  }
  const double each = std::sqrt(most / kBoundChord_mm);
  const int steps = kBends * std::clamp(static_cast<int>(std::ceil(each)), kLeastSteps, kMostSteps);
  PlateChain chain;
  PlatePoint from = value(first);
  for (int i = 1; i <= steps; ++i) {
    const PlatePoint to = value(first + (last - first) * i / steps);
    chain.push_back(straight_step(from, to));
    from = to;
  }
  return chain;
}

// In arcs of less than half a turn.
PlateChain arcs_of(PlatePoint centre, double radius_mm, PlatePoint from, double turn) {
  const int count = static_cast<int>(std::abs(turn) / 3) + 1;
  PlateChain chain;
  for (int i = 0; i < count; ++i) {
    const PlatePoint to = centre + turned(from - centre, turn / count);
    chain.push_back({from, to, turn / count, centre, radius_mm});
    from = to;
  }
  return chain;
}

PlateChain bound_of(const TopoDS_Edge& edge, const SolidForm::FaceForm& form) {
  const BRepAdaptor_Curve2d curve(edge, form.face);
  const auto value = [&](double at) {
    const gp_Pnt2d p = curve.Value(at);
    return PlatePoint{p.X() * form.mm_per_a, p.Y() * form.mm_per_b};
  };
  const double first = curve.FirstParameter();
  const double last = curve.LastParameter();
  if (curve.GetType() == GeomAbs_Line) return {straight_step(value(first), value(last))};
  if (curve.GetType() == GeomAbs_Circle && std::abs(form.mm_per_a - form.mm_per_b) < kSameScale) {
    const gp_Circ2d circle = curve.Circle();
    const PlatePoint centre{circle.Location().X() * form.mm_per_a, circle.Location().Y() * form.mm_per_b};
    const double turn = (circle.IsDirect() ? 1 : -1) * (last - first);
    return arcs_of(centre, circle.Radius() * form.mm_per_a, value(first), turn);
  }
  return chords_of(value, first, last);
}

// Not a map of edges: a seam bounds its face twice.
std::vector<PlateChain> bounds_of(const SolidForm::FaceForm& form) {
  std::vector<PlateChain> bounds;
  for (TopExp_Explorer edges(form.face, TopAbs_EDGE); edges.More(); edges.Next()) {
    bounds.push_back(bound_of(TopoDS::Edge(edges.Current()), form));
  }
  return bounds;
}

// A flat face's outline in its plane's axes.
PlateOutline outline_of(const TopoDS_Wire& wire, const gp_Pln& plane) {
  PlateOutline outline;
  for (BRepTools_WireExplorer edges(wire); edges.More(); edges.Next()) {
    const TopoDS_Edge& edge = edges.Current();
    const BRepAdaptor_Curve curve(edge);
    const double from = curve.FirstParameter();
    const double span = curve.LastParameter() - from;
    const bool forward = edge.Orientation() == TopAbs_FORWARD;
    int steps = 1;
    if (curve.GetType() != GeomAbs_Line) {
      const gp_Pnt a = curve.Value(from);
      const gp_Pnt b = curve.Value(from + span / 2);
      const gp_Pnt c = curve.Value(from + span);
      const double sagitta = gp_Vec(a, b).Crossed(gp_Vec(a, c)).Magnitude() / std::max(a.Distance(c), kHair_mm);
      steps = std::clamp(static_cast<int>(2 * std::sqrt(sagitta / kCapChord_mm)), 16, kMostCapSteps);
    }
    for (int i = 0; i < steps; ++i) {
      const double share = static_cast<double>(forward ? i : steps - i) / steps;
      double u = 0;
      double v = 0;
      ElSLib::Parameters(plane, curve.Value(from + share * span), u, v);
      outline.push_back({u, v});
    }
  }
  return outline;
}

// Two numbers that scatter: enough to tell the shapes of one lens apart.
class Fingerprint {
 public:
  void add(double value) { add(static_cast<std::uint64_t>(std::llround(value * 1e6))); }
  void add(std::uint64_t value) {
    first_ = (first_ ^ value) * 0x9E3779B97F4A7C15ULL;
    first_ ^= first_ >> 29;
    second_ = (second_ + value) * 0xC2B2AE3D27D4EB4FULL;
    second_ ^= second_ >> 31;
  }
  void add(const gp_Pnt& p) {
    add(p.X());
    add(p.Y());
    add(p.Z());
  }
  [[nodiscard]] std::string word() const { return fmt::format("{:016x}{:016x}", first_, second_); }

 private:
  std::uint64_t first_ = 0x243F6A8885A308D3ULL;
  std::uint64_t second_ = 0x13198A2E03707344ULL;
};

}  // namespace

std::string form_word(const TopoDS_Shape& made) {
  Fingerprint print;
  each_of(made, TopAbs_VERTEX, [&](const TopoDS_Shape& v) { print.add(BRep_Tool::Pnt(TopoDS::Vertex(v))); });
  each_of(made, TopAbs_EDGE, [&](const TopoDS_Shape& e) {
    if (BRep_Tool::Degenerated(TopoDS::Edge(e))) return;
    const BRepAdaptor_Curve curve(TopoDS::Edge(e));
    print.add(static_cast<std::uint64_t>(curve.GetType()));
    print.add(curve.Value(0.5 * (curve.FirstParameter() + curve.LastParameter())));
  });
  each_of(made, TopAbs_FACE, [&](const TopoDS_Shape& f) {
    const BRepAdaptor_Surface surface(TopoDS::Face(f), false);
    print.add(static_cast<std::uint64_t>(surface.GetType()));
    print.add(static_cast<std::uint64_t>(f.Orientation()));
  });
  print.add(static_cast<std::uint64_t>(made.Orientation()));
  return print.word();
}

bool SolidForm::FaceForm::holds(double a, double b) const {
  const PlatePoint p{a * mm_per_a, b * mm_per_b};
  // Asked twice, a hair apart: where two edges meet they may miss each other by the last bits, and a look along
  // just that line would go between them.
  return bounds.holds(p) && bounds.holds({p.u, p.v + kHair_mm});
}

SolidForm::SolidForm(const TopoDS_Shape& made) : made_(made), word_(form_word(made)) {
  each_of(made_, TopAbs_VERTEX,
          [&](const TopoDS_Shape& v) { corners_.push_back(BRep_Tool::Pnt(TopoDS::Vertex(v))); });
  find_edges();
  BRepBndLib::Add(made_, box_);
  box_.SetGap(0);
  find_faces();
  find_caps();
}

void SolidForm::find_edges() {
  each_of(made_, TopAbs_EDGE, [&](const TopoDS_Shape& e) {
    const TopoDS_Edge& edge = TopoDS::Edge(e);
    if (!BRep_Tool::Degenerated(edge)) edges_.push_back({edge, ball_of(edge)});
  });
}

void SolidForm::find_faces() {
  each_of(made_, TopAbs_FACE, [&](const TopoDS_Shape& f) {
    FaceForm form{TopoDS::Face(f), ball_of(f), 0, 0, 0, 0, 1, 1, RegionField(PlateRegion{})};
    BRepTools::UVBounds(form.face, form.low_a, form.high_a, form.low_b, form.high_b);
    measure_speeds(form);
    form.bounds = RegionField(bounds_of(form));
    faces_.push_back(std::move(form));
  });
}

void SolidForm::find_caps() {
  samples_ = corners_;
  for (const FaceForm& form : faces_) {
    const BRepAdaptor_Surface surface(form.face, false);
    if (surface.GetType() == GeomAbs_Plane) continue;
    for (int i = 0; i <= kSamplesAlong; ++i) {
      for (int k = 0; k <= kSamplesAlong; ++k) {
        const double a = form.low_a + (form.high_a - form.low_a) * i / kSamplesAlong;
        const double b = form.low_b + (form.high_b - form.low_b) * k / kSamplesAlong;
        if (form.holds(a, b)) samples_.push_back(surface.Value(a, b));
        if (i > 0 && k > 0) {
          const double half_a = (form.high_a - form.low_a) / kSamplesAlong / 2;
          const double half_b = (form.high_b - form.low_b) / kSamplesAlong / 2;
          gp_Pnt p;
          gp_Vec da, db, daa, dbb, dab;
          surface.D2(a - half_a, b - half_b, p, da, db, daa, dbb, dab);
          // Between samples the surface leaves their chords by no more than its bend over half a step.
          slack_mm_ =
              std::max(slack_mm_, (daa.Magnitude() * half_a * half_a + dbb.Magnitude() * half_b * half_b +
                                   2 * dab.Magnitude() * half_a * half_b));
        }
      }
    }
  }
  for (const EdgeForm& form : edges_) {
    const BRepAdaptor_Curve curve(form.edge);
    if (curve.GetType() == GeomAbs_Line) continue;
    for (int i = 1; i < kSamplesAlong; ++i) {
      const double share = static_cast<double>(i) / kSamplesAlong;
      samples_.push_back(
          curve.Value(curve.FirstParameter() + share * (curve.LastParameter() - curve.FirstParameter())));
    }
  }
  for (const FaceForm& form : faces_) {
    const BRepAdaptor_Surface surface(form.face, false);
    if (surface.GetType() != GeomAbs_Plane) continue;
    gp_Ax3 axes = surface.Plane().Position();
    if (axes.Direct() != (form.face.Orientation() == TopAbs_FORWARD)) axes.ZReverse();
    const gp_Pln plane(axes);
    const gp_Vec out(axes.Direction());
    const gp_Pnt on = axes.Location();
    const bool behind = std::all_of(samples_.begin(), samples_.end(),
                                    [&](const gp_Pnt& p) { return gp_Vec(on, p).Dot(out) < kBehind_mm; });
    if (!behind) continue;
    CapFace cap{plane, {}, RegionField(PlateRegion{})};
    for (TopExp_Explorer wires(form.face, TopAbs_WIRE); wires.More(); wires.Next()) {
      cap.outlines.push_back(outline_of(TopoDS::Wire(wires.Current()), plane));
    }
    cap.field = RegionField(cap.outlines);
    caps_.push_back(std::move(cap));
  }
}

}  // namespace prismwright
