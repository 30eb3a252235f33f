#pragma once

#include <optional>

#include "core/lens/plan.h"

namespace prismwright {

/// The heights between which a frame stands, mm in the lens frame. Between the glass and a ring's face there is
/// room for the prisms' play, then a rail that lies against the ring.
struct FrameHeights {
  double low_v = 0;       ///< upper face of the bottom ring: the ribs' lower ends
  double high_v = 0;      ///< lower face of the top ring: the ribs' upper ends
  double low_glass = 0;   ///< lowest place of any prism or zone
  double high_glass = 0;  ///< highest place
};

/// Blank when there is no zone to hold.
std::optional<FrameHeights> frame_heights(const LensPlan& plan);

}  // namespace prismwright
