#include "core/drawing/view_rooms.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace prismwright {

namespace {

constexpr double kColumn_mm = 64;
constexpr double kDimensions_mm = 18;  ///< left of and below the pictures
constexpr double kOff_mm = 8;          ///< above and right of them
constexpr double kScaleBar_mm = 12;
constexpr double kSmallestOnA4 = 0.2;

ViewLayout on_paper(double wide_mm, double high_mm, PaperPoint taken, Paper paper) {
  const auto room_of = [&](bool landscape) {
    const PaperBox room = view_rooms({paper, landscape}).pictures;
    return PaperPoint{room.high.x - room.low.x - taken.x, room.high.y - room.low.y - taken.y};
  };
  for (const DrawingScale& scale : drawing_scales()) {
    for (const bool landscape : {false, true}) {
      const PaperPoint room = room_of(landscape);
      if (scale.paper_per_mm * wide_mm <= room.x && scale.paper_per_mm * high_mm <= room.y)
        return {{paper, landscape}, scale.words, scale.paper_per_mm, view_rooms({paper, landscape})};
    }
  }
  const PaperPoint room = room_of(false);
  const double part = std::ceil(std::max(wide_mm / room.x, high_mm / room.y));
  return {{paper, false}, fmt::format("1:{:.0f}", part), 1 / part, view_rooms({paper, false})};
}

}  // namespace

ViewRooms view_rooms(SheetSize size) {
  const PaperBox frame = SheetMaker(size).frame();
  ViewRooms rooms;
  rooms.pictures = {
      {frame.low.x + kDimensions_mm, frame.low.y + SheetRooms::title_block + kScaleBar_mm + kDimensions_mm},
      {frame.high.x - kColumn_mm - kOff_mm, frame.high.y - kOff_mm}};
  rooms.column = {{frame.high.x - kColumn_mm, frame.low.y + SheetRooms::title_block}, frame.high};
  return rooms;
}

ViewLayout lay_out_views(double wide_mm, double high_mm, PaperPoint taken, std::optional<Paper> paper) {
  if (paper) return on_paper(wide_mm, high_mm, taken, *paper);
  ViewLayout small = on_paper(wide_mm, high_mm, taken, Paper::a4);
  return small.paper_per_mm >= kSmallestOnA4 ? small : on_paper(wide_mm, high_mm, taken, Paper::a3);
}

}  // namespace prismwright
