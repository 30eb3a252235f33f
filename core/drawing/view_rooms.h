#pragma once

#include <optional>
#include <string>

#include "core/drawing/sheet_layout.h"
#include "core/drawing/sheet_maker.h"

namespace prismwright {

/// Where the pictures of a part and its column of words stand on a sheet; title block, scale bar and the
/// dimensions left of and below the pictures have their own room.
struct ViewRooms {
  PaperBox pictures;
  PaperBox column;
};
ViewRooms view_rooms(SheetSize size);

/// Paper and scale for the pictures of a part.
struct ViewLayout {
  SheetSize size;
  std::string scale;
  double paper_per_mm = 1;
  ViewRooms rooms;
};
/// The sheet on which pictures `wide_mm` by `high_mm` of the thing, with `taken` mm of paper between them,
/// stand largest, upright where both ways are alike; A4 down to 1:5 and else A3 when no paper is given. Things
/// of more than ten metres get a round scale of their own.
ViewLayout lay_out_views(double wide_mm, double high_mm, PaperPoint taken, std::optional<Paper> paper);

}  // namespace prismwright
