#include "core/drawing/card_pages.h"

#include "core/drawing/sheet_layout.h"
#include "core/drawing/traveller_parts.h"

namespace prismwright {

namespace {

constexpr double kPad_mm = 3;
constexpr double kHeading_mm = 3;
constexpr double kHeadingRoom_mm = 6.5;
constexpr double kOverHeading_mm = 2;
constexpr double kBetweenLines_mm = 0.8;

}  // namespace

CardPages::CardPages(Paper paper) : paper_(paper) { turn_page(); }

void CardPages::turn_page() {
  makers_.emplace_back(SheetSize{paper_, false});
  const PaperBox frame = makers_.back().frame();
  left_ = frame.low.x + kPad_mm;
  right_ = frame.high.x - kPad_mm;
  low_ = frame.low.y + SheetRooms::title_block + kPad_mm;
  high_ = top_ = frame.high.y - kPad_mm;
}

void CardPages::need(double mm) {
  if (top_ - mm < low_ && top_ < high_) turn_page();
}

void CardPages::heading(const std::string& words, double with_mm) {
  need(kOverHeading_mm + kHeadingRoom_mm + with_mm);
  if (top_ < high_) skip(kOverHeading_mm);
  maker().write({words, {left_, top_ - kHeading_mm - 1}, kHeading_mm, Anchor::left, false, true});
  skip(kHeadingRoom_mm);
}

void CardPages::table(const std::vector<double>& shares, const Cells& head, const std::vector<Cells>& rows) {
  std::vector<double> widths;
  for (const double share : shares) widths.push_back(share * wide());
  need(2 * kRow_mm);
  row(widths, head, true);
  for (const Cells& cells : rows) {
    if (top_ - kRow_mm < low_) {
      turn_page();
      row(widths, head, true);
    }
    row(widths, cells, false);
  }
}

void CardPages::lines(const std::vector<std::string>& words) {
  for (const std::string& one : words) {
    const double high = height_of_lines({one}, wide());
    need(high);
    write_lines(maker(), {one}, {{left_, top_ - high - 0.01}, {right_, top_}});
    skip(high + kBetweenLines_mm);
  }
}

void CardPages::row(const std::vector<double>& widths, const Cells& cells, bool head) {
  draw_ruled_row(maker(), place(), kRow_mm, widths, cells, head);
  skip(kRow_mm);
}

}  // namespace prismwright
