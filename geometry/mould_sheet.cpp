#include "geometry/mould_sheet.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRep_Builder.hxx>
#include <Standard_Failure.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Wire.hxx>
#include <gp_Ax3.hxx>

#include "geometry/mould_plan.h"

namespace prismwright {

namespace {

constexpr double kMostMitre = 2;       ///< times the strip
constexpr double kShareOfEdge = 0.35;  ///< of the shorter edge that a hollow corner may take from it
constexpr double kNearness = 6;        ///< power of distance by which the rim near by counts
constexpr double kLevel_mm = 2e-5;

gp_XY plan_of(const gp_Pnt& p) { return {p.X(), p.Y()}; }

std::vector<gp_XY> plan_of(const std::vector<gp_Pnt>& places) {
  std::vector<gp_XY> plan;
  for (const gp_Pnt& p : places) plan.push_back(plan_of(p));
  return plan;
}

double height_of(const gp_Pln& plane, double x, double y) {
  const gp_Dir n = plane.Axis().Direction();
  const gp_Pnt p = plane.Location();
  return p.Z() - ((x - p.X()) * n.X() + (y - p.Y()) * n.Y()) / n.Z();
}

gp_Pln plane_through(const gp_Pnt& a, const gp_Pnt& b, const gp_Pnt& c) {
  return {a, gp_Dir(gp_Vec(a, b).Crossed(gp_Vec(a, c)))};
}

/// Where each corner of a loop is carried to: outward, square to its two edges.
std::vector<gp_Pnt> carried_out(const RimLoop& loop, double strip_mm) {
  const std::size_t n = loop.edges.size();
  std::vector<gp_Pnt> outer;
  for (std::size_t i = 0; i < n; ++i) {
    const RimEdge& before = loop.edges[(i + n - 1) % n];
    const RimEdge& after = loop.edges[i];
    const gp_XY one = plan_of(before.finish) - plan_of(before.start),
                two = plan_of(after.finish) - plan_of(after.start);
    const gp_XY u = one / one.Modulus(), v = two / two.Modulus();
    const double turn = std::atan2(u ^ v, u * v);
    double wide = strip_mm;
    if (turn < 0) {
      const double room = kShareOfEdge * std::min(one.Modulus(), two.Modulus());
      wide = std::min(wide, room / std::max(1e-9, std::tan(-turn / 2)));
    }
    gp_XY out(u.Y() + v.Y(), -u.X() - v.X());
    out = out.Modulus() > 1e-9 ? out / out.Modulus() : u;
    const double mitre = std::min(kMostMitre, 1 / std::max(1e-3, std::cos(turn / 2)));
    outer.emplace_back(after.start.X() + wide * mitre * out.X(), after.start.Y() + wide * mitre * out.Y(),
                       after.start.Z());
  }
  return outer;
}

class SheetMaker {
 public:
  SheetMaker(const RimmedMaster& master, const BlockPlan& plan, double strip_mm, double spacing_mm,
             SharedEdges& edges)
      : master_(master), plan_(plan), strip_mm_(strip_mm), spacing_mm_(spacing_mm), edges_(edges) {}

  PartingSheet make() {
    measure();
    for (const RimLoop& loop : master_.loops) {
      if (loop.level) {
        carry_plane_on(loop);
      } else {
        lay_strip(loop);
      }
    }
    return std::move(sheet_);
  }

 private:
  void measure() {
    sheet_.low_mm = std::numeric_limits<double>::infinity();
    sheet_.high_mm = -sheet_.low_mm;
    const RimLoop& outer = master_.loops.front();
    const gp_Pln plane(outer.plane_place, outer.plane_normal);
    sheet_.one_plane = outer.level;
    for (const RimLoop& loop : master_.loops) {
      for (const gp_Pnt& p : loop.places) {
        sheet_.low_mm = std::min(sheet_.low_mm, p.Z());
        sheet_.high_mm = std::max(sheet_.high_mm, p.Z());
        if (plane.Distance(p) > kLevel_mm) sheet_.one_plane = false;
      }
    }
  }

  [[nodiscard]] std::array<gp_XY, 4> corners() const {
    return {gp_XY(plan_.x0, plan_.y0), gp_XY(plan_.x1, plan_.y0), gp_XY(plan_.x1, plan_.y1),
            gp_XY(plan_.x0, plan_.y1)};
  }

  /// The walls' corners, and places between them, at heights that `height` gives; answers one closed walk.
  template <class Height>
  std::vector<int> lay_walls(double spacing_mm, Height height) {
    const auto at = corners();
    std::vector<int> walk;
    for (std::size_t side = 0; side < 4; ++side) {
      const gp_XY from = at[side], along = at[(side + 1) % 4] - from;
      const int pieces = std::clamp(static_cast<int>(along.Modulus() / spacing_mm), 1, 40);
      for (int i = 0; i < pieces; ++i) {
        const gp_XY p = from + along * (static_cast<double>(i) / pieces);
        sheet_.walls[side].push_back(edges_.add(gp_Pnt(p.X(), p.Y(), height(p))));
      }
      walk.insert(walk.end(), sheet_.walls[side].begin(), sheet_.walls[side].end());
    }
    for (std::size_t side = 0; side < 4; ++side)
      sheet_.walls[side].push_back(sheet_.walls[(side + 1) % 4].front());
    return walk;
  }

  /// The rim's edges as the sheet walks them.
  static TopoDS_Wire rim_wire(const RimLoop& loop) {
    BRep_Builder builder;
    TopoDS_Wire wire;
    builder.MakeWire(wire);
    for (auto it = loop.edges.rbegin(); it != loop.edges.rend(); ++it) {
      builder.UpdateEdge(it->edge, kLevel_mm);
      builder.UpdateVertex(it->from, kLevel_mm);
      builder.Add(wire, it->edge.Reversed());
    }
    wire.Closed(Standard_True);
    return wire;
  }

  void carry_plane_on(const RimLoop& loop) {
    const gp_Pln plane(loop.plane_place, loop.plane_normal);
    if (loop.hole) {
      sheet_.faces.push_back(BRepBuilderAPI_MakeFace(plane, rim_wire(loop), Standard_False).Face());
      return;
    }
    const auto height = [&](const gp_XY& p) { return height_of(plane, p.X(), p.Y()); };
    const auto walk = lay_walls(1e9, height);
    TopoDS_Face face = edges_.flat_face(walk, plane);
    BRep_Builder().Add(face, rim_wire(loop));
    sheet_.faces.push_back(face);
    const auto at = corners();
    const auto corner = [&](std::size_t i) { return gp_Pnt(at[i].X(), at[i].Y(), height(at[i])); };
    sheet_.triangles.push_back({corner(0), corner(1), corner(2)});
    sheet_.triangles.push_back({corner(0), corner(2), corner(3)});
  }

  void lay_strip(const RimLoop& loop) {
    std::vector<int> inner, outer;
    const auto carried = carried_out(loop, strip_mm_);
    const auto polygon = plan_of(carried);
    if (meets_itself(polygon) || polygons_meet(polygon, plan_of(loop.places)))
      throw Standard_Failure("its parting surface would fold");
    for (const RimEdge& rim : loop.edges) inner.push_back(edges_.add(rim.from));
    for (const gp_Pnt& p : carried) outer.push_back(edges_.add(p));
    for (std::size_t i = 0; i < inner.size(); ++i) {
      const std::size_t next = (i + 1) % inner.size();
      sheet_.faces.push_back(strip_face(loop.edges[i], inner[i], inner[next], outer[i], outer[next], edges_));
    }
    if (loop.hole) {
      std::reverse(outer.begin(), outer.end());
      fill(outer, {});
    } else {
      fill(lay_walls(spacing_mm_, [&](const gp_XY& p) { return height_near(carried, p); }), outer);
    }
  }

  /// Height of the rim near a place: all of it counts, the near parts far more.
  static double height_near(const std::vector<gp_Pnt>& carried, const gp_XY& p) {
    double sum = 0, weights = 0;
    for (std::size_t i = 0; i < carried.size(); ++i) {
      const gp_Pnt& a = carried[i];
      const gp_Pnt& b = carried[(i + 1) % carried.size()];
      const double size = a.Distance(b);
      for (const double share : {0.0, 0.25, 0.5, 0.75}) {
        const gp_XYZ at = a.XYZ() * (1 - share) + b.XYZ() * share;
        const double weight =
            size * std::pow(std::max(1e-3, (gp_XY(at.X(), at.Y()) - p).Modulus()), -kNearness);
        sum += weight * at.Z();
        weights += weight;
      }
    }
    return sum / weights;
  }

  void fill(const std::vector<int>& outline, const std::vector<int>& hole) {
    std::vector<int> all = outline;
    all.insert(all.end(), hole.begin(), hole.end());
    const auto plan = [&](const std::vector<int>& walk) {
      std::vector<gp_XY> places;
      for (const int i : walk) places.push_back(plan_of(edges_.place(i)));
      return places;
    };
    for (const auto& t : triangles_between(plan(outline), plan(hole))) {
      const int a = all[std::size_t(t[0])], b = all[std::size_t(t[1])], c = all[std::size_t(t[2])];
      sheet_.faces.push_back(
          edges_.flat_face({a, b, c}, plane_through(edges_.place(a), edges_.place(b), edges_.place(c))));
      sheet_.triangles.push_back({edges_.place(a), edges_.place(b), edges_.place(c)});
    }
  }

  const RimmedMaster& master_;
  BlockPlan plan_;
  double strip_mm_;
  double spacing_mm_;
  SharedEdges& edges_;
  PartingSheet sheet_;
};

}  // namespace

std::optional<double> PartingSheet::height_mm(double x, double y) const {
  for (const auto& t : triangles) {
    const gp_XY a = plan_of(t[0]), b = plan_of(t[1]), c = plan_of(t[2]), p(x, y);
    const double area = (b - a) ^ (c - a);
    const double v = ((p - a) ^ (c - a)) / area, w = ((b - a) ^ (p - a)) / area;
    if (v < -1e-9 || w < -1e-9 || v + w > 1 + 1e-9) continue;
    return t[0].Z() + v * (t[1].Z() - t[0].Z()) + w * (t[2].Z() - t[0].Z());
  }
  return std::nullopt;
}

PartingSheet parting_sheet(const RimmedMaster& master, const BlockPlan& plan, double strip_mm,
                           double spacing_mm, SharedEdges& edges) {
  return SheetMaker(master, plan, strip_mm, spacing_mm, edges).make();
}

}  // namespace prismwright
