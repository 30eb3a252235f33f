#pragma once

#include <optional>
#include <vector>

#include "core/frame/plate.h"
#include "core/lens/plan.h"

namespace prismwright {

/// A stretch of height in the lens frame, mm.
struct HeightRange {
  double low = 0;
  double high = 0;
};

/// Which side planes the door moves away from: that of its hinge and that of its latch. Azimuths stand with the
/// panels; `next_*` is the panel that shares the plane with the door.
struct DoorPlaces {
  int panel = 0;
  Side hinge_side = Side::anticlockwise;  ///< left as seen from the lamp is the anticlockwise side
  int next_at_hinge = 0;
  int next_at_latch = 0;
};

/// Blank when the lens has no door.
std::optional<DoorPlaces> door_places(const LensPlan& plan);

/// Heights at which a rib needs an upright outer edge for hinge leaves (two, at a fifth of the height from
/// either end) or the latch (one, at the middle), between the rings' faces `low_v_mm` and `high_v_mm`. Empty
/// for a rib that has nothing to do with the door. A hinge is eight pin diameters tall, but no taller than a
/// tenth of the rib.
std::vector<HeightRange> pad_heights(const LensPlan& plan, int panel, Side side, double low_v_mm,
                                     double high_v_mm);

}  // namespace prismwright
