#pragma once

#include <string>

#include "core/drawing/line_view.h"
#include "core/drawing/sheet_maker.h"

namespace prismwright {

/// Where a view stands on the sheet, and how large.
struct ViewMap {
  PaperPoint origin;  ///< of the view's own plane
  double paper_per_mm = 1;

  [[nodiscard]] PaperPoint at(PaperPoint p) const {
    return {origin.x + paper_per_mm * p.x, origin.y + paper_per_mm * p.y};
  }
};
/// The view's rectangle in the middle of the room.
ViewMap view_in_middle(const LineView& view, double paper_per_mm, const PaperBox& room);

/// A single thing has few lines, of which words keep clear; a whole lens has too many for that, and they are
/// drawn finer where they crowd at a small scale.
enum class ViewCrowd { few, many };

/// Its lines: outlines of glass wide, the edges inside them thin, metal thinner. Steps that paper cannot show
/// are left out.
void draw_line_view(SheetMaker& maker, const LineView& view, const ViewMap& map, ViewCrowd crowd);

}  // namespace prismwright
