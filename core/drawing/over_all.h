#pragma once

#include "core/frame/frame_plan.h"
#include "core/lens/plan.h"

namespace prismwright {

/// How far something reaches from the lens axis and from the focal plane, mm.
struct OverAll {
  double radius_mm = 0;
  double low_z = 0;
  double high_z = 0;

  [[nodiscard]] double height_mm() const { return high_z - low_z; }
};

/// The glass of all prisms: the circle about the lens axis that no prism crosses, heights as size_of has them
/// (core/lens/lens_size.h). Within 0.02 mm.
OverAll glass_over_all(const LensPlan& plan);

/// All plates, pins and screws of the frame. Within 0.02 mm; an empty frame reaches nowhere.
OverAll frame_over_all(const FramePlan& frame);

}  // namespace prismwright
