#include "geometry/solid_check.h"

#include <cmath>

#include <fmt/format.h>
#include <BRepCheck_Analyzer.hxx>
#include <BRepGProp.hxx>
#include <BRep_Tool.hxx>
#include <GProp_GProps.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>

namespace prismwright {

namespace {

Problem unsound(const std::string& mark, std::string_view why) {
  return request_problem(
      "solid", mark,
      fmt::format("{}: {}. Change the panel's width or the end gap by a hundredth of a millimetre or a degree, "
                  "or divide the zones otherwise.",
                  mark, why));
}

int count_of(const TopoDS_Shape& shape, TopAbs_ShapeEnum kind) {
  int count = 0;
  for (TopExp_Explorer it(shape, kind); it.More(); it.Next()) ++count;
  return count;
}

constexpr double kPlainShare = 1e-6;
constexpr double kAgreement = 1e-7;

bool all_shells_closed(const TopoDS_Shape& solid) {
  for (TopExp_Explorer it(solid, TopAbs_SHELL); it.More(); it.Next()) {
    if (!BRep_Tool::IsClosed(it.Current())) return false;
  }
  return true;
}

}  // namespace

SolidMeasure measured(const TopoDS_Shape& solid) {
  // The overload with a precision goes wrong on full turns; this one holds 1e-8.
  GProp_GProps sums;
  BRepGProp::VolumeProperties(solid, sums);
  return {sums.Mass(), sums.CentreOfMass()};
}

SolidMeasure measured(const TopoDS_Shape& solid, double known_mm3) {
  const SolidMeasure plain = measured(solid);
  const double off = std::abs(plain.volume_mm3 - known_mm3);
  if (off <= kPlainShare * std::abs(known_mm3)) return plain;
  GProp_GProps sums;
  BRepGProp::VolumeProperties(solid, sums, kAgreement);
  if (std::abs(sums.Mass() - known_mm3) >= off) return plain;
  return {sums.Mass(), sums.CentreOfMass()};
}

Outcome<TopoDS_Solid> sound_solid(const TopoDS_Shape& shape, const std::string& mark) {
  const int solids = shape.IsNull() ? 0 : count_of(shape, TopAbs_SOLID);
  if (solids != 1) {
    return unsound(mark, fmt::format("its ring is cut into {} pieces where 1 is needed", solids));
  }
  TopoDS_Solid solid = TopoDS::Solid(TopExp_Explorer(shape, TopAbs_SOLID).Current());
  if (count_of(solid, TopAbs_SHELL) != 1 || !all_shells_closed(solid)) {
    return unsound(mark, "its skin is not closed");
  }
  if (!BRepCheck_Analyzer(solid).IsValid()) return unsound(mark, "its solid does not pass the kernel's check");
  const double volume = measured(solid).volume_mm3;
  if (volume < 0) solid = TopoDS::Solid(solid.Reversed());
  if (!(std::abs(volume) > 1e-9)) return unsound(mark, "its solid has no volume");
  return solid;
}

}  // namespace prismwright
