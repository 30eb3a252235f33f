#pragma once

#include <TopoDS_Shape.hxx>
#include <gp_Pnt.hxx>

namespace prismwright {

/// The room between two solids.
struct SolidGap {
  double gap_mm = 0;       ///< least distance; 0 when they touch or overlap
  double overlap_mm3 = 0;  ///< common volume, worked out only where the distance is 0
  gp_Pnt first_point;      ///< nearest points
  gp_Pnt second_point;
};

/// Distances below this count as touching, mm.
inline constexpr double kTouching_mm = 1e-6;
/// Found gaps so small may be an overlap that is as shallow.
inline constexpr double kMeets_mm = 3e-4;

/// Volume that two solids have in common, mm3. Throws Standard_Failure.
double common_volume_mm3(const TopoDS_Shape& first, const TopoDS_Shape& second);

/// What they have in common within a cube of 2 mm about a place, mm3: a part of their common volume, found
/// where the whole is not. The kernel's boolean may lose a shallow overlap of long solids and say nothing of
/// it. Throws Standard_Failure.
double common_volume_near_mm3(const TopoDS_Shape& first, const TopoDS_Shape& second, const gp_Pnt& place);

/// Common volume of two solids that meet, where common_volume_mm3 finds none: what they have in common about
/// the first place of either's edges that lies more than 0.01 mm inside the other, so at least that much, mm3;
/// 0 where there is no such place. Throws Standard_Failure.
double shallow_overlap_mm3(const TopoDS_Shape& first, const TopoDS_Shape& second);

/// Exact gap between two solids. Safe to call from several threads on shared shapes. Throws Standard_Failure
/// when the modeller finds no answer.
SolidGap gap_between(const TopoDS_Shape& first, const TopoDS_Shape& second);

}  // namespace prismwright
