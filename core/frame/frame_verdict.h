#pragma once

#include "core/frame/frame_plan.h"

namespace prismwright {

/// The first warning for which a frame is not well: too thin brass, or a part that has no room and is left out
/// or cannot move. Null where there is none; what else is warned of asks for a look.
const FrameWarning* warning_of_not_well(const FramePlan& frame);

}  // namespace prismwright
