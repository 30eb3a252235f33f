#include "core/frame/frame_verdict.h"

#include <algorithm>

namespace prismwright {

const FrameWarning* warning_of_not_well(const FramePlan& frame) {
  const auto bad = std::ranges::find_if(frame.warnings, [](const FrameWarning& warning) {
    return warning.kind == FrameWarning::Kind::thin_brass || warning.kind == FrameWarning::Kind::no_room;
  });
  return bad == frame.warnings.end() ? nullptr : &*bad;
}

}  // namespace prismwright
