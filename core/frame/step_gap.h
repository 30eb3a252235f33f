#pragma once

#include "core/frame/plate_chain.h"

namespace prismwright {

/// The least distance between two lines or arcs of a plane, and where it is.
struct StepGap {
  double gap_mm = 0;
  PlatePoint first;
  PlatePoint second;
};

/// In closed form: 0 where the two cross; else from an end of one, square to a line and an arc, or along the
/// line through two arcs' centres.
StepGap gap_of(const PlateStep& first, const PlateStep& second);

}  // namespace prismwright
