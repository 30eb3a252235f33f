#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/drawing/column_words.h"
#include "core/drawing/drawing.h"
#include "core/drawing/pocket_view.h"
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

/// Places for a word of that size round one, `off` mm and farther away, nearer ones first; of those equally
/// near first the one that lies that way (radians), then the others by turns on either side of it.
std::vector<PaperPoint> places_round(PaperPoint p, double off, double size_mm, double way = 0);

/// A chain as a stroke; an open one too.
Stroke chain_stroke(const PlateChain& chain, const PlateMap& map, LineClass line, bool closed);

/// Outline, openings, pockets, holes and sunk heads. `hatched`: pockets are hatched and named, inside where
/// there is room. Texts that come later keep clear of the lines.
void draw_plate(SheetMaker& maker, const FlatPart& part, const PlateMap& map, bool hatched);

}  // namespace prismwright
