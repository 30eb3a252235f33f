#pragma once

#include "core/frame/rib_holes.h"

namespace prismwright {

/// A level plate between the inner faces of a panel's two ribs, bounded by two arcs about the lens axis: a
/// rail, or a cross rib of belt work.
struct LevelPlate {
  std::string mark;
  PartKind kind = PartKind::rail;
  double inner_radius_mm = 0;
  double outer_radius_mm = 0;
  HeightRange heights;
  [[nodiscard]] double thickness_mm() const { return heights.high - heights.low; }
};

/// Least radius at which the two ribs' inner faces leave room for a plate between them, mm.
double least_plate_radius_mm(const PanelBay& bay);

/// Adds the plate, in the level frame of the panel's middle, joined to both ribs, and the screws through the
/// ribs into its ends: two at each end where it is wide enough, else one. Warns where no place keeps enough
/// brass. The bay must have both ribs, the radii must rise, and the inner one be no less than the least.
void add_level_plate(FrameDesk& desk, const PanelBay& bay, const LevelPlate& plate);

}  // namespace prismwright
