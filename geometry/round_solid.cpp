#include "geometry/round_solid.h"

#include <algorithm>
#include <cmath>

#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakePolygon.hxx>
#include <BRepPrimAPI_MakeRevol.hxx>
#include <gp_Ax1.hxx>
#include <gp_Ax3.hxx>

#include "core/base/angle.h"

namespace prismwright {
namespace {

// The head's greatest radius, and how far along the part its cone reaches.
struct Head {
  double wide_mm;
  double deep_mm;
};

Head head_of(const RoundPart& part) {
  const double shank = part.diameter_mm / 2;
  const double wide = std::max(shank, part.head_mm / 2);
  return {wide, std::min(wide - shank, part.length_mm)};
}

}  // namespace

TopoDS_Shape round_solid(const RoundPart& part) {
  const double bore = part.bore_mm / 2;
  const Head head = head_of(part);
  const double shank = head.wide_mm - head.deep_mm;
  BRepBuilderAPI_MakePolygon half;
  half.Add(gp_Pnt(bore, 0, 0));
  half.Add(gp_Pnt(head.wide_mm, 0, 0));
  if (head.deep_mm > 0) half.Add(gp_Pnt(shank, 0, head.deep_mm));
  if (head.deep_mm < part.length_mm) half.Add(gp_Pnt(shank, 0, part.length_mm));
  half.Add(gp_Pnt(bore, 0, part.length_mm));
  half.Close();
  const gp_Ax1 axis(gp_Pnt(0, 0, 0), gp_Dir(0, 0, 1));
  return BRepPrimAPI_MakeRevol(BRepBuilderAPI_MakeFace(half.Wire(), true).Face(), axis).Shape();
}

gp_Trsf round_place(const RoundPart& part) {
  const gp_Ax3 stands(gp_Pnt(part.from.x, part.from.y, part.from.z),
                      gp_Dir(part.along.x, part.along.y, part.along.z));
  gp_Trsf place;
  place.SetTransformation(stands, gp_Ax3());
  return place;
}

double round_volume_mm3(const RoundPart& part) {
  const Head head = head_of(part);
  const double shank = head.wide_mm - head.deep_mm;
  const double cone =
      kPi / 3 * head.deep_mm * (head.wide_mm * head.wide_mm + head.wide_mm * shank + shank * shank);
  return cone + kPi * shank * shank * (part.length_mm - head.deep_mm) -
         kPi / 4 * part.bore_mm * part.bore_mm * part.length_mm;
}

}  // namespace prismwright
