#pragma once

#include "core/base/outcome.h"
#include "core/drawing/house_words.h"
#include "core/drawing/line_view.h"
#include "core/frame/frame_plan.h"
#include "core/lens/plan.h"

namespace prismwright {

/// The whole lens seen from afar; panel 1's axis points to the viewer in the elevation, to the right in the
/// plan (x of the lens frame to the right, y up).
struct ArrangementViews {
  LineView elevation;
  LineView plan;
};

/// The general arrangement: elevation, plan and half section to one scale with the main dimensions (focal
/// distance, over all with and without the frame, height of the focal plane over the base, panel widths and
/// numbers, door), and a column of what the lens is. Texts never cover each other, nor the border. Refused: a
/// lens larger than the smallest scale takes.
Outcome<Drawing> arrangement_sheet(const LensPlan& plan, const FramePlan& frame, const ArrangementViews& views,
                                   const HouseWords& words);

}  // namespace prismwright
