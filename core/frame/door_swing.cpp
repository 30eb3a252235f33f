#include "core/frame/door_swing.h"

#include <cmath>
#include <limits>

#include "core/frame/frame_desk.h"
#include "core/frame/plate_polygons.h"

namespace prismwright {

LatchRoom latch_room(const RibPlan& latch_rib, SpacePoint hinge) {
  LatchRoom room;
  room.least_u_mm = extent_of({latch_rib.outline}).low.u;
  const SpaceVector from_axis{hinge.x, hinge.y, 0};
  const double away = dot(from_axis, inward_of(latch_rib));
  const double along = dot(from_axis, outward_of(latch_rib)) - room.least_u_mm;
  if (along <= 0) return room;
  if (along >= away) {
    room.needed_mm = std::numeric_limits<double>::infinity();
    return room;
  }
  room.needed_mm = away - std::sqrt(away * away - along * along);
  return room;
}

}  // namespace prismwright
