#pragma once

#include <string>

#include "core/drawing/lengths.h"
#include "core/drawing/prism_sheet.h"
#include "core/drawing/sheet_layout.h"

namespace prismwright {

/// How the three pictures of a prism stand on its sheet.
struct PrismPictures {
  PaperBox section;
  PaperBox end;  ///< for the view of its end; no room at all where there is no such view
  PaperBox sea;
  const DrawingScale* section_scale = nullptr;
  const DrawingScale* view_scale = nullptr;  ///< of both views; null: there are none
  double low_mm = 0;                         ///< where they end
};

/// Shares out the room from the top down, no more of it than they need: a long prism has its view from the sea
/// below the section, a round one beside it. Both views have one scale, the largest at which both fit.
PrismPictures lay_out_pictures(const PlannedPrism& prism, const PrismSolidFacts& facts, const PaperBox& room);

/// Draws section and views, each with its name, scale and scale bar; the views with their dimensions over all.
void draw_pictures(SheetMaker& maker, const PlannedPrism& prism, const PrismSolidFacts& facts,
                   const PrismPictures& pictures, LengthWords lengths);

}  // namespace prismwright
