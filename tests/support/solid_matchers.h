#pragma once

#include <cmath>
#include <string>

#include <gmock/gmock.h>
#include <BRepCheck_Analyzer.hxx>
#include <BRepGProp.hxx>
#include <BRep_Tool.hxx>
#include <GProp_GProps.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS_Shape.hxx>

namespace prismwright {

inline int count_in(const TopoDS_Shape& shape, TopAbs_ShapeEnum kind) {
  int count = 0;
  for (TopExp_Explorer it(shape, kind); it.More(); it.Next()) ++count;
  return count;
}

/// The same, a piece that several others share counted once.
inline int distinct_in(const TopoDS_Shape& shape, TopAbs_ShapeEnum kind) {
  TopTools_IndexedMapOfShape map;
  TopExp::MapShapes(shape, kind, map);
  return map.Extent();
}

inline double kernel_volume_mm3(const TopoDS_Shape& shape) {
  GProp_GProps sums;
  BRepGProp::VolumeProperties(shape, sums);
  return sums.Mass();
}

/// What keeps a shape from being one closed, valid solid turned outward; empty when nothing does.
inline std::string flaw_of(const TopoDS_Shape& shape) {
  if (shape.IsNull()) return "it is null";
  if (count_in(shape, TopAbs_SOLID) != 1)
    return "it holds " + std::to_string(count_in(shape, TopAbs_SOLID)) + " solids";
  if (count_in(shape, TopAbs_SHELL) != 1) return "its solid has more than one shell";
  if (!BRep_Tool::IsClosed(TopExp_Explorer(shape, TopAbs_SHELL).Current())) return "its shell is open";
  if (!BRepCheck_Analyzer(shape).IsValid()) return "it does not pass the kernel's check";
  const double volume = kernel_volume_mm3(shape);
  if (!(volume > 0)) return "its volume is " + std::to_string(volume);
  return {};
}

MATCHER(IsValidSolid, "is one closed valid solid turned outward") {
  const std::string flaw = flaw_of(arg);
  *result_listener << flaw;
  return flaw.empty();
}

}  // namespace prismwright
