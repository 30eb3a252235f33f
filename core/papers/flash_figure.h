#pragma once

#include "core/light/light_report.h"
#include "core/papers/plot_frame.h"

namespace prismwright {

/// Intensity (of the lens alone) that a far observer sees over one period from the start of the rhythm, with
/// the length of each flash at half of its peak; of a lens that stands still, the light of each panel by
/// azimuth.
void draw_flash(SheetMaker& maker, const PaperBox& room, const LightReport& light, double size_mm);
/// Whether there is anything to draw.
bool has_flash_figure(const LightReport& light);

}  // namespace prismwright
