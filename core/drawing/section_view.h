#pragma once

#include "core/drawing/lengths.h"
#include "core/drawing/section_images.h"
#include "core/drawing/sheet_layout.h"
#include "core/drawing/sheet_maker.h"

namespace prismwright {

/// What the first sheet shows.
struct SheetView {
  const Section& section;
  const std::vector<SectionImage>& images;
  SectionReach reach;
  SheetLayout layout;
  LengthWords lengths;
  double tolerance_mm = 0;
};

/// Glass, hatched, and metal.
void draw_glass(SheetMaker& maker, const SheetView& view);
/// Lens axis, focal plane, focal points and the limiting rays of each band with their elevations.
void draw_axes_and_limits(SheetMaker& maker, const SheetView& view);
/// Focal distance, greatest radius and heights.
void draw_dimensions(SheetMaker& maker, const SheetView& view);
/// Every piece of glass named in a column on the right, with its limits and a leader. Where there is no room
/// for all, every second, third, ... is named and the sheet says so.
void draw_zone_marks(SheetMaker& maker, const SheetView& view);

}  // namespace prismwright
