#pragma once

#include <optional>

#include "core/drawing/section_images.h"
#include "core/drawing/sheet_layout.h"
#include "core/drawing/text_box.h"

namespace prismwright {

/// What the three views of a general arrangement take, mm of the lens: rectangles about the focus.
struct ArrangementReach {
  PaperBox elevation;
  PaperBox plan;
  double section_r = 0;  ///< the half section, from the axis outward; as high as the elevation
};

/// Paper, scale and places of the views. Elevation and half section stand side by side, their focal planes on
/// one line; the plan below the elevation, its axis under the elevation's, or right of both.
struct ArrangementLayout {
  SheetSize size;
  DrawingScale scale;
  PaperMap elevation;
  PaperMap section;
  PaperMap plan;    ///< on the second sheet where there are two
  PaperBox column;  ///< for words, beside or below the plan
  bool two_sheets = false;
};

/// What stands round the views, mm of paper.
struct ArrangementRooms {
  static constexpr double heights = 30;     ///< left of the elevation
  static constexpr double between = 30;     ///< elevation and section; "focal plane" stands there
  static constexpr double section = 28;     ///< right of the section, for its heights
  static constexpr double above = 10;       ///< elevation and section, for their names
  static constexpr double above_plan = 5;   ///< beyond its panel numbers, for its name
  static constexpr double below = 25;       ///< elevation and section, for breadths
  static constexpr double round_plan = 18;  ///< for panel numbers
  static constexpr double column = 66;
  static constexpr double scale_bar = 10;
};

/// The layout on one sheet of the paper with the largest scale; on two where the views would stand less than
/// 55 mm large on one, and larger on two. Blank where even the smallest scale is too large. `column_high`: what
/// the words take, mm.
std::optional<ArrangementLayout> lay_out_arrangement(const ArrangementReach& reach, double column_high,
                                                     Paper paper);

}  // namespace prismwright
