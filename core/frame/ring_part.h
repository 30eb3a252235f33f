#pragma once

#include "core/frame/frame_plan.h"

namespace prismwright {

/// The ring as a plate to be cut, without holes yet. Depth 0 is its lower face; x runs to azimuth 0.
FlatPart ring_part(const RingPlan& ring);

}  // namespace prismwright
