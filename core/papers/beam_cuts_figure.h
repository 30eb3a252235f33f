#pragma once

#include "core/light/light_report.h"
#include "core/papers/plot_frame.h"

namespace prismwright {

/// The mapped beam cut level and upright through its peak: intensity (of the lens alone) against azimuth and
/// against elevation, framed to what holds a fiftieth of the peak, with the width between half peaks. Nothing
/// is drawn of a map without light.
void draw_beam_cuts(SheetMaker& maker, const PaperBox& room, const LightReport& light, double size_mm);

}  // namespace prismwright
