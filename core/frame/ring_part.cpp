#include "core/frame/ring_part.h"

namespace prismwright {

FlatPart ring_part(const RingPlan& ring) {
  FlatPart part;
  part.mark = ring.mark;
  part.kind = PartKind::ring;
  part.thickness_mm = ring.thickness_mm;
  part.outline = circle_chain({}, ring.outer_radius_mm);
  part.openings = {circle_chain({}, ring.inner_radius_mm)};
  part.place.origin = {0, 0, ring.z_low_mm};
  return part;
}

}  // namespace prismwright
