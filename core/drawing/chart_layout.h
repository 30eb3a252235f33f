#pragma once

#include <optional>
#include <vector>

#include "core/drawing/chart_panel.h"
#include "core/drawing/sheet_layout.h"

namespace prismwright {

/// What of a chart's sheet is left for panels; below stand the legend, scale bar and title block, above a line
/// of words.
struct ChartRooms {
  PaperBox panels;
  PaperBox legend;
  PaperPoint scale_bar;
  PaperPoint words;  ///< base line
};
ChartRooms chart_rooms(SheetSize size);

/// One drawing of a panel on a sheet.
struct PanelSpot {
  std::size_t panel = 0;  ///< index of the panel
  MarksPart part;
  PaperPoint axis;  ///< where its axis meets the focal plane, on paper
};

/// Sheets of one size and scale, with what stands on each.
struct ChartSheets {
  SheetSize size;
  DrawingScale scale;
  std::vector<PanelMarks> marks;  ///< of each panel at this scale
  std::vector<std::vector<PanelSpot>> sheets;
};

/// The whole lens on one sheet of this paper, in as many rows as show it largest; lying where both ways are
/// alike. Blank where even the smallest scale is too large.
std::optional<ChartSheets> lay_out_chart(const std::vector<UnrolledPanel>& panels, Paper paper);

/// Panels with all their marks, at the scale and way of the paper that take few sheets and leave few marks
/// beside their prisms. Blank where even the smallest scale is too large.
std::optional<ChartSheets> lay_out_panels(const std::vector<UnrolledPanel>& panels, Paper paper);

}  // namespace prismwright
