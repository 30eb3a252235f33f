#pragma once

#include <optional>
#include <string>
#include <vector>

#include <gp_Pnt.hxx>

#include "core/base/outcome.h"
#include "core/base/progress.h"
#include "core/frame/frame_plan.h"
#include "geometry/bodies.h"
#include "geometry/frame_bodies.h"

namespace prismwright {

/// The door at one angle: where it comes nearest to what does not move.
struct DoorStep {
  double angle_deg = 0;
  double gap_mm = 0;
  std::string first;   ///< mark of a part of the door
  std::string second;  ///< mark of what it comes near to, or of a surrounding (surroundings.h)
  gp_Pnt first_point;  ///< lens frame, with the door at this angle
  gp_Pnt second_point;
};

/// A door on its way from shut to open.
struct DoorSweep {
  std::vector<DoorStep> steps;  ///< from shut as far as it opens freely; where it is stopped, that is the last
  DoorStep least;               ///< the least gap of the way, and where on it
  double free_deg = 0;          ///< it opens so far without touching anything; 180 at most
  bool opens_enough = false;    ///< free_deg reaches frame.door_open_deg
  bool shut_enough = false;     ///< shut, it keeps kMetalApart_mm of everything
};

/// Error bounds of a sweep: the least gap is not more than kDoorGap_mm greater than the true one, the free
/// angle not more than kDoorFree_deg.
inline constexpr double kDoorGap_mm = 0.02;
inline constexpr double kDoorFree_deg = 0.1;

/// Turns everything of the door's panel about the hinge, against all else and the surroundings (the lens stands
/// still: the lantern's glazing is a tube). Left out: the latch, which a maker turns upright first, and the
/// joints of the plan, which may touch. Sunk cones and bores count as brass.
///
/// The distance of two parts changes with the angle no faster than the lesser of their farthest radii about the
/// hinge, and never falls under their distance in height: so a measured gap tells of the angles round it, and
/// only those are measured where the least may be. Blank when the frame has no door. Problems: as
/// find_clearances.
Outcome<std::optional<DoorSweep>> sweep_door(const LensPlan& plan, const LensBodies& bodies,
                                             const FramePlan& frame, const std::vector<FrameBody>& metal,
                                             const Progress& progress = {});

}  // namespace prismwright
