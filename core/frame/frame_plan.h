#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/frame/frame_parts.h"
#include "core/frame/plate.h"
#include "core/lens/plan.h"

namespace prismwright {

/// A blind pocket: opens in the rib's inner face. Prisms whose pockets run together share one.
struct Pocket {
  PlateOutline outline;            ///< `edge` as a polygon within 0.002 mm
  std::vector<std::string> marks;  ///< prisms that it takes
  PlateChain edge = {};
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
  PlateOutline outline;  ///< `edge` as a polygon within 0.002 mm
  std::vector<Pocket> pockets;
  std::string shape_key;  ///< equal keys and equal side: the same plate
  PlateChain edge = {};   ///< outline of lines and arcs
  /// How far the outer face stands inside the side plane; the rib is thinner by as much. Not 0 for the ribs of
  /// a door, so that prisms and pockets of all panels are alike.
  double set_back_mm = 0;
};

/// A flat ring about the lens axis.
struct RingPlan {
  std::string mark;  ///< "ring-top", "ring-bottom"
  double inner_radius_mm = 0;
  double outer_radius_mm = 0;
  double z_low_mm = 0;
  double thickness_mm = 8;
};

/// The whole frame. `ribs` and `rings` are what light and prisms meet; `flats`, `rounds` and `bars` are every
/// part as it is made, ribs and rings with their holes among them. Marks are unique over all three lists.
struct FramePlan {
  std::vector<RibPlan> ribs;
  std::vector<RingPlan> rings;
  std::vector<std::string> notes;
  std::vector<FlatPart> flats = {};
  std::vector<RoundPart> rounds = {};
  std::vector<TurnedBar> bars = {};
  std::vector<FrameJoint> joints = {};
  std::vector<FrameWarning> warnings = {};
  /// The hinge of the door: an upright line through this place of the lens frame, when there is a door. The
  /// door opens seaward; `opens_clockwise` as seen from above.
  struct Hinge {
    SpacePoint place;
    bool opens_clockwise = false;
  };
  std::optional<Hinge> hinge = std::nullopt;
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
