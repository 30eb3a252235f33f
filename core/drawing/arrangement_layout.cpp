#include "core/drawing/arrangement_layout.h"

#include <algorithm>

#include "core/drawing/sheet_maker.h"

namespace prismwright {

namespace {

using Rooms = ArrangementRooms;

constexpr double kPad_mm = 3;
constexpr double kLeastView_mm = 55;

/// The views at a scale: what each takes on paper with all that stands round it, and where the focus lies in
/// it from its lower left corner.
struct Block {
  double wide = 0;
  double high = 0;
  PaperPoint focus;
};

Block elevation_block(const ArrangementReach& reach, double scale) {
  const PaperBox& box = reach.elevation;
  return {Rooms::heights + scale * (box.high.x - box.low.x) + Rooms::between / 2,
          Rooms::below + scale * (box.high.y - box.low.y) + Rooms::above,
          {Rooms::heights - scale * box.low.x, Rooms::below - scale * box.low.y}};
}

Block section_block(const ArrangementReach& reach, double scale) {
  const Block elevation = elevation_block(reach, scale);
  return {Rooms::between / 2 + scale * reach.section_r + Rooms::section,
          elevation.high,
          {Rooms::between / 2, elevation.focus.y}};
}

Block plan_block(const ArrangementReach& reach, double scale) {
  const PaperBox& box = reach.plan;
  return {2 * Rooms::round_plan + scale * (box.high.x - box.low.x),
          2 * Rooms::round_plan + scale * (box.high.y - box.low.y) + Rooms::above_plan,
          {Rooms::round_plan - scale * box.low.x, Rooms::round_plan - scale * box.low.y}};
}

/// Sets the blocks of one scale on one size of sheet.
class Setter {
 public:
  Setter(const ArrangementReach& reach, double column_high, SheetSize size, const DrawingScale& scale)
      : elevation_(elevation_block(reach, scale.paper_per_mm)),
        section_(section_block(reach, scale.paper_per_mm)),
        plan_(plan_block(reach, scale.paper_per_mm)),
        column_high_(column_high) {
    const PaperBox frame = SheetMaker(size).frame();
    room_ = {{frame.low.x + kPad_mm, frame.low.y + SheetRooms::title_block + Rooms::scale_bar},
             {frame.high.x - kPad_mm, frame.high.y - kPad_mm}};
    layout_.size = size;
    layout_.scale = scale;
  }

  /// Plan right of the section, the column below it.
  std::optional<ArrangementLayout> plan_over_column() {
    const double right = std::max(plan_.wide, Rooms::column);
    const auto spare =
        spare_of(elevation_.wide + section_.wide + right, std::max(elevation_.high, plan_.high + column_high_));
    if (!spare) return std::nullopt;
    const double x = set_row(spare->x / 3, room_.low.y + (high() - elevation_.high) / 2) + spare->x / 3;
    const double aside = (right - plan_.wide) / 2;
    const double upper = (high() - plan_.high - column_high_) / 3;
    set_plan({x + aside, room_.high.y - upper - plan_.high});
    const double left = x + (right - Rooms::column) / 2;
    const double top = room_.high.y - 2 * upper - plan_.high;
    layout_.column = {{left, room_.low.y}, {left + Rooms::column, top}};
    return layout_;
  }

  /// Plan below the elevation, the column beside it.
  std::optional<ArrangementLayout> plan_below() {
    const double left = std::max(elevation_.focus.x, plan_.focus.x);
    const double upper = left - elevation_.focus.x + elevation_.wide + section_.wide;
    const double lower = left - plan_.focus.x + plan_.wide + Rooms::column;
    const auto spare = spare_of(std::max(upper, lower), elevation_.high + std::max(plan_.high, column_high_));
    if (!spare) return std::nullopt;
    const double axis = room_.low.x + spare->x / 2 + left;
    const double low = room_.high.y - spare->y / 3 - elevation_.high;
    set_row(axis - elevation_.focus.x - room_.low.x, low);
    const double plan_low = room_.low.y + spare->y / 3 + std::max(0.0, column_high_ - plan_.high) / 2;
    set_plan({axis - plan_.focus.x, plan_low});
    const double beside = axis - plan_.focus.x + plan_.wide;
    const double x = beside + (room_.high.x - beside - Rooms::column) / 2;
    layout_.column = {{x, room_.low.y}, {x + Rooms::column, low}};
    return layout_;
  }

  /// All in one row, the column at its end.
  std::optional<ArrangementLayout> in_a_row() {
    const auto spare = spare_of(elevation_.wide + section_.wide + plan_.wide + Rooms::column,
                                std::max({elevation_.high, plan_.high, column_high_}));
    if (!spare) return std::nullopt;
    double x = set_row(spare->x / 4, room_.low.y + (high() - elevation_.high) / 2) + spare->x / 4;
    set_plan({x, room_.low.y + (high() - plan_.high) / 2});
    x += plan_.wide + spare->x / 4;
    layout_.column = {{x, room_.low.y}, {x + Rooms::column, room_.high.y}};
    return layout_;
  }

  /// Elevation and section on the first sheet, plan and column side by side on the second.
  std::optional<ArrangementLayout> two_sheets() {
    const auto first = spare_of(elevation_.wide + section_.wide, elevation_.high);
    const auto second = spare_of(plan_.wide + Rooms::column, std::max(plan_.high, column_high_));
    if (!first || !second) return std::nullopt;
    set_row(first->x / 2, room_.low.y + first->y / 2);
    set_plan({room_.low.x + second->x / 3, room_.low.y + (high() - plan_.high) / 2});
    const double x = room_.low.x + plan_.wide + 2 * second->x / 3;
    layout_.column = {{x, room_.low.y}, {x + Rooms::column, room_.high.y}};
    layout_.two_sheets = true;
    return layout_;
  }

 private:
  [[nodiscard]] double high() const { return room_.high.y - room_.low.y; }

  /// What is left free; blank where it does not fit.
  [[nodiscard]] std::optional<PaperPoint> spare_of(double wide, double needed_high) const {
    const PaperPoint spare = {room_.high.x - room_.low.x - wide, high() - needed_high};
    if (spare.x < 0 || spare.y < 0) return std::nullopt;
    return spare;
  }

  /// Elevation and section side by side; answers where the section ends.
  double set_row(double from_left, double low) {
    const double left = room_.low.x + from_left;
    const double scale = layout_.scale.paper_per_mm;
    layout_.elevation = {{left + elevation_.focus.x, low + elevation_.focus.y}, scale};
    layout_.section = {{left + elevation_.wide + section_.focus.x, low + section_.focus.y}, scale};
    return left + elevation_.wide + section_.wide;
  }

  void set_plan(PaperPoint low) {
    layout_.plan = {{low.x + plan_.focus.x, low.y + plan_.focus.y}, layout_.scale.paper_per_mm};
  }

  Block elevation_;
  Block section_;
  Block plan_;
  double column_high_;
  PaperBox room_;
  ArrangementLayout layout_;
};

using Way = std::optional<ArrangementLayout> (Setter::*)();

/// The first of the ways that fits, at the largest scale, lying before upright.
std::optional<ArrangementLayout> largest(const ArrangementReach& reach, double column_high, Paper paper,
                                         const std::vector<Way>& ways) {
  for (const DrawingScale& scale : drawing_scales()) {
    for (const bool lying : {true, false}) {
      for (const Way way : ways) {
        Setter setter(reach, column_high, {paper, lying}, scale);
        if (auto layout = (setter.*way)()) return layout;
      }
    }
  }
  return std::nullopt;
}

}  // namespace

std::optional<ArrangementLayout> lay_out_arrangement(const ArrangementReach& reach, double column_high,
                                                     Paper paper) {
  auto one =
      largest(reach, column_high, paper, {&Setter::plan_over_column, &Setter::plan_below, &Setter::in_a_row});
  const double greatest =
      std::max(reach.elevation.high.x - reach.elevation.low.x, reach.elevation.high.y - reach.elevation.low.y);
  if (one && greatest * one->scale.paper_per_mm >= kLeastView_mm) return one;
  auto two = largest(reach, column_high, paper, {&Setter::two_sheets});
  if (!one) return two;
  return two && two->scale.paper_per_mm > one->scale.paper_per_mm ? two : one;
}

}  // namespace prismwright
