#include <cmath>

#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakeWire.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <GC_MakeArcOfCircle.hxx>
#include <TopoDS.hxx>
#include <gp_Ax2.hxx>

#include "core/base/angle.h"
#include "geometry/mould_standing.h"

namespace prismwright {

namespace {

constexpr double kChannelDraft_deg = 3;
constexpr double kThroat_mm = 3;  ///< length of a throat over the high point
constexpr double kBeyond_mm = 2;  ///< how far a tool reaches out of the block
constexpr double kSameShare = 0.98;

double reach_of(const gp_Dir& up, const BlockPlan& plan, double bottom_mm, double top_mm) {
  if (up.X() > 0.5) return plan.x1;
  if (up.X() < -0.5) return -plan.x0;
  if (up.Y() > 0.5) return plan.y1;
  if (up.Y() < -0.5) return -plan.y0;
  return up.Z() > 0 ? top_mm : -bottom_mm;
}

gp_Pnt at_height(const gp_Pnt& place, const gp_Dir& up, double height_mm) {
  return gp_Pnt(place.XYZ() + up.XYZ() * (height_mm - place.XYZ() * up.XYZ()));
}

/// A round channel along `up` from a place, open and widening towards `side` (+1: +Z, -1: -Z).
TopoDS_Shape channel(const gp_Pnt& from, const gp_Dir& up, double length_mm, double radius_mm, double side,
                     double open_mm) {
  const double draft = radians(kChannelDraft_deg);
  const gp_XYZ z(0, 0, side), x = up.XYZ().Crossed(gp_XYZ(0, 0, 1));
  const auto place = [&](double across, double along) { return gp_Pnt(from.XYZ() + x * across + z * along); };
  const double across = radius_mm * std::cos(draft), along = -radius_mm * std::sin(draft);
  const double wide = across + (open_mm - along) * std::tan(draft);
  const gp_Pnt a = place(across, along), b = place(-across, along), c = place(-wide, open_mm),
               d = place(wide, open_mm);
  BRepBuilderAPI_MakeWire wire;
  wire.Add(BRepBuilderAPI_MakeEdge(GC_MakeArcOfCircle(a, place(0, -radius_mm), b).Value()).Edge());
  wire.Add(BRepBuilderAPI_MakeEdge(b, c).Edge());
  wire.Add(BRepBuilderAPI_MakeEdge(c, d).Edge());
  wire.Add(BRepBuilderAPI_MakeEdge(d, a).Edge());
  return BRepPrimAPI_MakePrism(BRepBuilderAPI_MakeFace(wire.Wire(), Standard_True).Face(),
                               gp_Vec(up) * length_mm)
      .Shape();
}

class ToolMaker {
 public:
  ToolMaker(const gp_Dir& up, double bottom_mm, double top_mm)
      : up_(up), bottom_mm_(bottom_mm), top_mm_(top_mm) {}

  void add(const gp_Pnt& from, double length_mm, double radius_mm) {
    if (std::abs(up_.Z()) > 0.5) {
      const TopoDS_Shape round = BRepPrimAPI_MakeCylinder(gp_Ax2(from, up_), radius_mm, length_mm).Shape();
      (up_.Z() > 0 ? tools_.upper : tools_.lower).push_back(round);
      return;
    }
    const double open = top_mm_ - bottom_mm_;
    tools_.lower.push_back(channel(from, up_, length_mm, radius_mm, 1, open));
    tools_.upper.push_back(channel(from, up_, length_mm, radius_mm, -1, open));
  }
  OpeningTools take() { return std::move(tools_); }

 private:
  gp_Dir up_;
  double bottom_mm_;
  double top_mm_;
  OpeningTools tools_;
};

}  // namespace

OpeningTools opening_tools(const PlannedOpening& opening, const gp_Dir& up, const BlockPlan& plan,
                           double bottom_mm, double top_mm) {
  const double end = reach_of(up, plan, bottom_mm, top_mm) + kBeyond_mm;
  ToolMaker maker(up, bottom_mm, top_mm);
  maker.add(at_height(opening.foot, up, opening.floor_mm), end - opening.floor_mm, opening.throat_mm / 2);
  const double bore_from = opening.top_mm + kThroat_mm;
  if (opening.throat_mm < kSameShare * opening.bore_mm && bore_from < end - kBeyond_mm)
    maker.add(at_height(opening.foot, up, bore_from), end - bore_from, opening.bore_mm / 2);
  return maker.take();
}

gp_Pnt mouth_of(const PlannedOpening& opening, const gp_Dir& up, const BlockPlan& plan, double bottom_mm,
                double top_mm) {
  return at_height(opening.foot, up, reach_of(up, plan, bottom_mm, top_mm));
}

}  // namespace prismwright
