#pragma once

#include <string>
#include <vector>

#include "core/frame/frame_heights.h"
#include "core/frame/frame_plan.h"

namespace prismwright {

/// One side rib with what is to be said of it. Mark, panel, side and azimuth are given to the rib when it is
/// placed, and so are the marks of its warnings.
struct RibShape {
  RibPlan rib;
  std::vector<std::string> notes;
  std::vector<FrameWarning> warnings;
};

/// A side of a panel for which a rib is to be shaped.
struct RibTask {
  PanelPlace place;
  Side side = Side::clockwise;
  std::vector<const PlannedPrism*> prisms;  ///< of the panel

  /// Angle from the panel's axis to this side, degrees, positive away from it.
  [[nodiscard]] double own_deg() const;
  [[nodiscard]] double width_deg() const { return place.to_deg - place.from_deg; }
};

/// Equal for sides whose ribs have the same outline and pockets: congruent sides, mirror images among them.
std::string likeness_of(const RibTask& task, const LensPlan& plan, const FrameHeights& heights);

/// Outline and pockets of the rib. An empty outline: there is nothing to hold.
RibShape shaped_rib(const RibTask& task, const LensPlan& plan, const FrameHeights& heights);

}  // namespace prismwright
