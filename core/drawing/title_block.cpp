#include "core/drawing/title_block.h"

#include <algorithm>

#include "core/drawing/sheet_layout.h"

namespace prismwright {

namespace {

constexpr double kHeight_mm = SheetRooms::title_block;
constexpr double kTitleShare = 0.4;
constexpr double kPad_mm = 1.5;
constexpr double kCaption_mm = 1.9;
constexpr double kLeast_mm = 1.9;

/// Words that fit the room: smaller down to 1.9 mm, then shortened.
void write_fitted(SheetMaker& maker, const std::string& words, PaperPoint place, double size_mm, double room_mm,
                  bool bold = false) {
  const std::string clean = clean_words(words);
  const double need = text_width_mm(clean, size_mm, bold);
  const double size = need <= room_mm ? size_mm : std::max(kLeast_mm, size_mm * room_mm / need);
  maker.write({shortened(clean, size, room_mm, bold), place, size, Anchor::left, false, bold});
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
  write_fitted(maker, words.title, {left + 2 * kPad_mm, low + 15.5}, 5, title - 4 * kPad_mm, true);
  write_fitted(maker, words.subject, {left + 2 * kPad_mm, low + 6.5}, 3, title - 4 * kPad_mm);

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
    write_fitted(maker, said, {x + kPad_mm, y + 3.2}, 3, cell - 2 * kPad_mm);
  }
}

void draw_title_block(SheetMaker& maker, const TitleWords& words) {
  draw_title_block(maker, TitleCells{words.title,
                                     words.subject,
                                     {{{"order", words.order},
                                       {"focal distance", words.focal_distance},
                                       {"material, index", words.material},
                                       {"scale", words.scale},
                                       {"lengths", words.units},
                                       {"date", words.date},
                                       {"revision", words.revision},
                                       {"sheet", words.sheet}}}});
}

}  // namespace prismwright
