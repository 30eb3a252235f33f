#pragma once

#include <optional>

#include "core/drawing/drawing.h"
#include "core/drawing/sheet_layout.h"
#include "core/drawing/sheet_maker.h"
#include "core/frame/frame_parts.h"
#include "core/frame/plate_polygons.h"

namespace prismwright {

/// Where a plate stands on paper.
struct PlateMap {
  PaperPoint origin;  ///< of the plate's own frame
  double paper_per_mm = 1;

  [[nodiscard]] PaperPoint at(PlatePoint p) const {
    return {origin.x + paper_per_mm * p.u, origin.y + paper_per_mm * p.v};
  }
};

/// Paper, scale and place for a picture with a column of words on its right.
struct PlateLayout {
  SheetSize size;
  std::string scale;
  PlateMap map;
  PaperBox column;  ///< for the words
};
/// The layout with the largest scale at which `extent` fits, upright where both ways are alike.
PlateLayout lay_out_plate(const PlateExtent& extent, std::optional<Paper> paper);

/// A chain as a stroke; an open one too.
Stroke chain_stroke(const PlateChain& chain, const PlateMap& map, LineClass line, bool closed);

/// Outline, openings, pockets (hatched where `hatched`), holes and sunk heads. Texts that come later keep clear
/// of the lines.
void draw_plate(SheetMaker& maker, const FlatPart& part, const PlateMap& map, bool hatched);

/// Lines of words from the top of the column downwards, long ones broken; a line that begins with a '#' is a
/// heading. Where they do not all fit, the last one says how many are left out.
void write_column(SheetMaker& maker, const PaperBox& column, const std::vector<std::string>& lines);

}  // namespace prismwright
