#include "core/drawing/sheet_maker.h"

#include <algorithm>
#include <cmath>

namespace prismwright {

namespace {

constexpr double kBorder_mm = 10;
constexpr double kClear_mm = 0.4;
constexpr double kArrow_mm = 2.4;
constexpr double kArrowHalf = 0.16;  ///< half its spread, radians

}  // namespace

SheetMaker::SheetMaker(SheetSize size)
    : frame_{{kBorder_mm, kBorder_mm}, {size.width_mm() - kBorder_mm, size.height_mm() - kBorder_mm}} {
  sheet_.size = size;
  draw(rectangle_stroke(frame_.low, frame_.high, LineClass::frame));
}

void SheetMaker::line(PaperPoint from, PaperPoint to, LineClass line) { draw(straight_stroke(from, to, line)); }

void SheetMaker::arrow(PaperPoint tip, double angle) {
  const auto back = [&](double turn) {
    return PaperPoint{tip.x - kArrow_mm * std::cos(angle + turn), tip.y - kArrow_mm * std::sin(angle + turn)};
  };
  Stroke head = straight_stroke(tip, back(kArrowHalf), LineClass::hatch);
  head.steps.push_back({back(-kArrowHalf), 0, {}, 0});
  head.closed = head.filled = true;
  draw(std::move(head));
}

void SheetMaker::write(DrawnText text) {
  text.words = clean_words(text.words);
  if (text.words.empty()) return;
  taken_.push_back(box_of(text));
  sheet_.texts.push_back(std::move(text));
}

bool SheetMaker::write_at_free(DrawnText text, const std::vector<PaperPoint>& places) {
  return write_at_first(text, places, false) || write_at_first(text, places, true);
}

bool SheetMaker::write_in_the_clear(DrawnText text, const std::vector<PaperPoint>& places) {
  return write_at_first(text, places, false);
}

bool SheetMaker::write_at_first(DrawnText& text, const std::vector<PaperPoint>& places, bool may_touch_lines) {
  text.words = clean_words(text.words);
  for (const PaperPoint place : places) {
    text.place = place;
    const PaperBox box = box_of(text);
    if (!free_of_texts(box) || (!may_touch_lines && !free_of_lines(box))) continue;
    write(std::move(text));
    return true;
  }
  return false;
}

bool SheetMaker::free_of_texts(const PaperBox& box) const {
  return holds(frame_, box) &&
         std::ranges::none_of(taken_, [&](const PaperBox& other) { return overlap(box, other, kClear_mm); });
}

bool SheetMaker::free_of_lines(const PaperBox& box) const {
  const PaperBox ground = {{box.low.x - kClear_mm, box.low.y - kClear_mm},
                           {box.high.x + kClear_mm, box.high.y + kClear_mm}};
  return std::ranges::none_of(walls_, [&](const Wall& wall) { return crosses(ground, wall.from, wall.to); });
}

}  // namespace prismwright
