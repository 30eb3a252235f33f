#include "core/drawing/title_block.h"

#include <algorithm>

#include "core/drawing/sheet_layout.h"
#include "core/drawing/table_pages.h"

namespace prismwright {

namespace {

constexpr double kHeight_mm = SheetRooms::title_block;
constexpr double kTitleShare = 0.4;
constexpr double kPad_mm = 1.5;
constexpr double kCaption_mm = 1.9;
constexpr double kLeast_mm = 1.2;   ///< nothing smaller can be read
constexpr double kSmaller = 0.95;   ///< from one size that is tried to the next
constexpr double kOneLine = 0.8;    ///< of the size: rather one line so small than two
constexpr double kPitch = 1.25;     ///< of the size, from line to line
constexpr double kLineHigh = 1.18;  ///< of the size, accents and tails included
constexpr double kTail = 0.24;      ///< of the size, below the base line

/// Words as they go into a room.
struct FittedWords {
  double size_mm = 0;
  std::vector<std::string> lines;
};

double height_of(const FittedWords& fitted) {
  return fitted.size_mm * (kPitch * (static_cast<double>(fitted.lines.size()) - 1) + kLineHigh);
}

/// On one line, or on as many as the room takes, as large as may be up to `size_mm`. Only words that even the
/// smallest size does not hold are cut, with three dots at their end.
FittedWords fitted(const std::string& words, double size_mm, const PaperBox& room, bool bold) {
  const double wide = room.high.x - room.low.x;
  const std::string clean = clean_words(words);
  const double one_line = std::min(1.0, wide / std::max(wide, text_width_mm(clean, size_mm, bold)));
  if (one_line >= kOneLine) return {one_line * size_mm, {clean}};
  FittedWords best;
  for (double size = size_mm; size >= kLeast_mm; size *= kSmaller) {
    best = {size, broken_words(clean, size, wide, bold)};
    if (height_of(best) <= room.high.y - room.low.y) return best;
  }
  while (best.lines.size() > 1 && height_of(best) > room.high.y - room.low.y) best.lines.pop_back();
  best.lines.back() = shortened(best.lines.back() + " ...", best.size_mm, wide, bold);
  return best;
}

/// From the left edge of the room, in the middle of its height.
void write_fitted(SheetMaker& maker, const std::string& words, const PaperBox& room, double size_mm,
                  bool bold = false) {
  const FittedWords fit = fitted(words, size_mm, room, bold);
  double y = (room.low.y + room.high.y + height_of(fit)) / 2 - (kLineHigh - kTail) * fit.size_mm;
  for (const std::string& line : fit.lines) {
    maker.write({line, {room.low.x, y}, fit.size_mm, Anchor::left, false, bold});
    y -= kPitch * fit.size_mm;
  }
}

}  // namespace

void draw_title_block(SheetMaker& maker, const TitleCells& words) {
  const PaperBox frame = maker.frame();
  const double left = frame.low.x;
  const double low = frame.low.y;
  const double wide = frame.high.x - left;
  const double title = kTitleShare * wide;
  maker.draw(rectangle_stroke(frame.low, {frame.high.x, low + kHeight_mm}, LineClass::frame));
  maker.line({left + title, low}, {left + title, low + kHeight_mm}, LineClass::frame);
  const double first = left + 2 * kPad_mm;
  const double last = left + title - 2 * kPad_mm;
  write_fitted(maker, words.title, {{first, low + 11.2}, {last, low + 25}}, 5, true);
  write_fitted(maker, words.subject, {{first, low + 1.2}, {last, low + 10.8}}, 3);

  const double cell = (wide - title) / TitleCells::kColumns;
  const double row = kHeight_mm / 2;
  maker.line({left + title, low + row}, {frame.high.x, low + row});
  for (std::size_t i = 0; i < words.cells.size(); ++i) {
    const std::size_t column = i % TitleCells::kColumns;
    const bool upper = i < TitleCells::kColumns;
    const double x = left + title + static_cast<double>(column) * cell;
    if (upper && column > 0) maker.line({x, low}, {x, low + kHeight_mm});
    const double y = upper ? low + row : low;
    const auto& [caption, said] = words.cells[i];
    maker.write({caption, {x + kPad_mm, y + row - 3.1}, kCaption_mm, Anchor::left, false, false});
    write_fitted(maker, said, {{x + kPad_mm, y + 0.9}, {x + cell - kPad_mm, y + 8.2}}, 3);
  }
}

void draw_title_block(SheetMaker& maker, const TitleWords& words) {
  draw_title_block(maker, TitleCells{words.title,
                                     words.subject,
                                     {{{"order", words.order},
                                       {"focal distance", words.focal_distance},
                                       {words.material_caption, words.material},
                                       {"scale", words.scale},
                                       {"lengths", words.units},
                                       {"date", words.date},
                                       {"revision", words.revision},
                                       {"sheet", words.sheet}}}});
}

}  // namespace prismwright
