#include "core/drawing/vessel_view.h"

#include <fmt/format.h>

#include <algorithm>

namespace prismwright {

namespace {

constexpr double kName_mm = 2.2;
constexpr double kLeastName_mm = 1.5;
constexpr double kWords_mm = 2.2;
constexpr double kLine_mm = 3.4;
constexpr double kFoot_mm = 2 * kLine_mm + 1;  ///< for the words below a shelf
constexpr double kBetween_mm = 6;
constexpr double kLargest_mm = 84;
constexpr double kTextHigh = 1.2;  ///< room that a line takes, on its size

/// The word in the box, level or turned, in the largest size that fits; false where none does.
bool write_inside(SheetMaker& maker, const std::string& word, PaperPoint middle, double wide, double high) {
  for (const double size : {kName_mm, (kName_mm + kLeastName_mm) / 2, kLeastName_mm}) {
    const double need = text_width_mm(clean_words(word), size) + 0.6;
    for (const bool turned : {false, true}) {
      if (need > (turned ? high : wide) || kTextHigh * size > (turned ? wide : high)) continue;
      const double down = 0.35 * size;
      const PaperPoint place =
          turned ? PaperPoint{middle.x + down, middle.y} : PaperPoint{middle.x, middle.y - down};
      maker.write({word, place, size, Anchor::middle, turned, false});
      return true;
    }
  }
  return false;
}

void draw_shelf(SheetMaker& maker, const VesselShelves& shelves, int shelf, PaperPoint middle, double across) {
  const double scale = across / shelves.diameter_mm;
  maker.draw(circle_stroke(middle, across / 2, LineClass::outline));
  int moulds = 0;
  double high = 0;
  for (const LoadPlace& place : shelves.load.places) {
    if (place.shelf != shelf) continue;
    ++moulds;
    high = std::max(high, place.high_mm);
    const PaperPoint at = {middle.x + scale * place.x_mm, middle.y + scale * place.y_mm};
    const double wide = scale * place.wide_mm;
    const double deep = scale * place.long_mm;
    maker.draw(rectangle_stroke({at.x - wide / 2, at.y - deep / 2}, {at.x + wide / 2, at.y + deep / 2},
                                LineClass::thin));
    if (!write_inside(maker, shelves.names[place.piece], at, wide, deep))
      write_inside(maker, shelves.numbers[place.piece], at, wide, deep);
  }
  const double foot = shelves.load.shelf_foot_mm[static_cast<std::size_t>(shelf)];
  const std::string lines[] = {
      fmt::format("Shelf {}: {} {}", shelf + 1, moulds, moulds == 1 ? "mould" : "moulds"),
      fmt::format("floor at {:.0f} mm, moulds to {:.0f} mm high", foot, high)};
  double y = middle.y - across / 2;
  for (const std::string& line : lines) {
    y -= kLine_mm;
    maker.write(
        {shortened(line, kWords_mm, across + kBetween_mm - 1), {middle.x, y}, kWords_mm, Anchor::middle});
  }
}

}  // namespace

double VesselGrid::height_mm() const { return rows * (across_mm + kFoot_mm + 1); }

VesselGrid vessel_grid(int shelves, double wide_mm) {
  VesselGrid grid;
  grid.columns = shelves <= 2 ? std::max(1, shelves) : 3;
  grid.rows = (shelves + grid.columns - 1) / grid.columns;
  grid.across_mm = std::min(kLargest_mm, (wide_mm - (grid.columns - 1) * kBetween_mm) / grid.columns);
  return grid;
}

void draw_shelves(SheetMaker& maker, const VesselShelves& shelves, int from, int to, PaperPoint upper_left,
                  const VesselGrid& grid) {
  for (int shelf = from; shelf < to; ++shelf) {
    const int column = (shelf - from) % grid.columns;
    const int row = (shelf - from) / grid.columns;
    const double x = upper_left.x + grid.across_mm / 2 + column * (grid.across_mm + kBetween_mm);
    const double y = upper_left.y - grid.across_mm / 2 - row * (grid.across_mm + kFoot_mm + 1);
    draw_shelf(maker, shelves, shelf, {x, y}, grid.across_mm);
  }
}

}  // namespace prismwright
