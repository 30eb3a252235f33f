#pragma once

#include <string>
#include <vector>

#include "core/frame/plate.h"
#include "core/lens/plan.h"

namespace prismwright {

/// A blind pocket: opens in the rib's inner face. Prisms whose pockets run together share one.
struct Pocket {
  PlateOutline outline;
  std::vector<std::string> marks;  ///< prisms that it takes
};

/// A flat side rib. Its outer face lies in the side plane of its panel (azimuth `azimuth_deg`), its inner
/// face `thickness_mm` inside the panel; pockets reach `pocket_mm` deep from the inner face.
struct RibPlan {
  std::string mark;  ///< "P03-rib-left": left as seen from the lamp (anticlockwise side), right likewise
  int panel = 1;
  Side side = Side::clockwise;
  double azimuth_deg = 0;
  double thickness_mm = 5;
  double pocket_mm = 3;
  PlateOutline outline;
  std::vector<Pocket> pockets;
  std::string shape_key;  ///< equal keys and equal side: the same plate
};

/// A flat ring about the lens axis.
struct RingPlan {
  std::string mark;  ///< "ring-top", "ring-bottom"
  double inner_radius_mm = 0;
  double outer_radius_mm = 0;
  double z_low_mm = 0;
  double thickness_mm = 8;
};

struct FramePlan {
  std::vector<RibPlan> ribs;
  std::vector<RingPlan> rings;
  std::vector<std::string> notes;
};

/// The frame that holds the plan's prisms. Pocket outlines hold the prism's true end (a bull's-eye ring's end
/// is not its section) through the whole depth of the pocket, grown by the setting gap; polygons within 0.005
/// mm.
FramePlan plan_frame(const LensPlan& plan);

/// Outlines of a prism where its panel's rib plane, set back by `depth_mm` from the side plane, cuts it:
/// rib-plane coordinates, within `chord_mm`. Empty when the prism does not reach that plane; two when a whole
/// ring is cut through above and below.
std::vector<PlateOutline> end_outlines(const PlannedPrism& prism, Side side, double depth_mm, double chord_mm);

}  // namespace prismwright
