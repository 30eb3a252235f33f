#include "core/drawing/chart_panel.h"

#include <algorithm>
#include <functional>

#include <fmt/format.h>

#include "core/drawing/hatch.h"
#include "core/drawing/lengths.h"
#include "core/drawing/spread_heights.h"
#include "core/drawing/stage_legend.h"

namespace prismwright {

namespace {

constexpr double kPaperChord_mm = 0.02;
constexpr double kClear_mm = 0.25;  ///< words off the ends of their prism
constexpr double kBetween_mm = 1;   ///< mark and sign
constexpr double kBeside_mm = 1.8;  ///< words of the column
constexpr double kPitch_mm = 1.42 * kBeside_mm;
constexpr double kElbow_mm = 2;   ///< leaders run level this far beyond the panel
constexpr double kLeader_mm = 9;  ///< from the panel to the words of the column
constexpr double kColumn_mm = 9 * kBeside_mm;
constexpr double kTail_mm = 0.5;  ///< of the words of the column, below their base line
constexpr double kHead_mm = 2.4;
constexpr double kLeastWide_mm = 7;  ///< of a panel with its number
constexpr double kDot_mm = 0.25;
constexpr double kTick_mm = 1.8;  ///< of the focal plane beside a panel
/// As wide as any sign, so that marks stay where they are when a stage changes.
constexpr const char* kWidestSign = "Mo";

double area(const PlateExtent& extent) {
  return (extent.high.u - extent.low.u) * (extent.high.v - extent.low.v);
}

std::vector<PlateOutline> outlines_of(const UnrolledPrism& prism, double chord_mm) {
  std::vector<PlateOutline> outlines;
  for (const PlateChain& loop : prism.loops) outlines.push_back(flattened(loop, chord_mm));
  return outlines;
}

/// Whether an upright rectangle lies inside the outlines: its middle does, and no edge of them crosses it.
bool lies_inside(const std::vector<PlateOutline>& outlines, PlatePoint middle, double wide, double high) {
  bool inside = false;
  const PaperBox box = {{middle.u - wide / 2, middle.v - high / 2}, {middle.u + wide / 2, middle.v + high / 2}};
  for (const PlateOutline& outline : outlines) {
    if (outline.empty()) continue;
    if (holds(outline, middle)) inside = !inside;
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const PlatePoint a = outline[i];
      const PlatePoint b = outline[(i + 1) % outline.size()];
      if (crosses(box, {a.u, a.v}, {b.u, b.v})) return false;
    }
  }
  return inside;
}

/// Room that one line of words takes, kept clear of the edges; on paper.
struct WordsRoom {
  double wide = 0;
  double high = 0;
};
WordsRoom words_room(double width_mm, double size_mm) {
  const PaperBox letters = box_of({"P", {}, size_mm});
  return {width_mm + 2 * kClear_mm, letters.high.y - letters.low.y + 0.1};
}

double width_of_mark(const std::string& mark, double size_mm) {
  return text_width_mm(mark, size_mm) + kBetween_mm + text_width_mm(kWidestSign, size_mm, true);
}

/// Places for words inside: the prism's own, then others at that height along its extent.
std::vector<PlatePoint> places_inside(const UnrolledPrism& prism, const std::vector<PlateOutline>& outlines) {
  std::vector<PlatePoint> places = {prism.middle};
  const PlateExtent extent = extent_of(outlines);
  for (const double share : {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8})
    places.push_back({extent.low.u + share * (extent.high.u - extent.low.u), prism.middle.v});
  return places;
}

std::optional<InsideWords> fit_inside(const UnrolledPrism& prism, const std::vector<PlateOutline>& outlines,
                                      double paper_per_mm) {
  for (const double size : {1.9, kLeastMark_mm}) {
    const WordsRoom room = words_room(width_of_mark(prism.mark, size), size);
    for (const PlatePoint place : places_inside(prism, outlines)) {
      if (lies_inside(outlines, place, room.wide / paper_per_mm, room.high / paper_per_mm))
        return InsideWords{place, size};
    }
  }
  return std::nullopt;
}

/// Base line of words whose ground lies evenly about a place.
double base_line(double middle_y, double size_mm) { return middle_y - 0.35 * size_mm; }

void write_inside(SheetMaker& maker, const UnrolledPrism& prism, const InsideWords& words, const PlateMap& map,
                  Stage stage) {
  const PaperPoint middle = map.at(words.middle);
  const double y = base_line(middle.y, words.size_mm);
  const double left = middle.x - width_of_mark(prism.mark, words.size_mm) / 2;
  maker.write({prism.mark, {left, y}, words.size_mm, Anchor::left, false, false});
  const double sign = left + text_width_mm(prism.mark, words.size_mm) + kBetween_mm;
  maker.write({sign_of(stage), {sign, y}, words.size_mm, Anchor::left, false, true});
}

void write_beside(SheetMaker& maker, const UnrolledPrism& prism, const PlateMap& map, double edge_x, double y,
                  Stage stage) {
  const PaperPoint glass = map.at(prism.right);
  Stroke dot = circle_stroke(glass, kDot_mm, LineClass::hatch);
  dot.filled = true;
  maker.draw(std::move(dot));
  Stroke leader = straight_stroke(glass, {edge_x + kElbow_mm, glass.y}, LineClass::hatch);
  leader.steps.push_back({{edge_x + kLeader_mm - 0.8, y + 0.36 * kBeside_mm}, 0, {}, 0});
  maker.draw(std::move(leader));
  const double x = edge_x + kLeader_mm;
  maker.write({prism.mark, {x, y}, kBeside_mm, Anchor::left, false, false});
  const double sign = x + text_width_mm(prism.mark, kBeside_mm) + kBetween_mm;
  maker.write({sign_of(stage), {sign, y}, kBeside_mm, Anchor::left, false, true});
}

void paint_prism(SheetMaker& maker, const UnrolledPrism& prism, const PlateMap& map, Stage stage) {
  constexpr double kHatch_mm = 1.2;
  for (const PlateChain& loop : prism.loops) {
    Stroke stroke = chain_stroke(loop, map, LineClass::hatch, true);
    const bool is_hole = signed_area_mm2(loop) < 0;
    stroke.tone = is_hole ? PaperColour{255, 255, 255} : tone_of(stage);
    maker.draw(std::move(stroke));
    if (!hatched(stage) || is_hole) continue;
    std::vector<PaperPoint> polygon;
    for (const PlatePoint p : flattened(loop, kPaperChord_mm / map.paper_per_mm)) polygon.push_back(map.at(p));
    for (Stroke& line : hatch_lines(polygon, kHatch_mm, false)) maker.draw(std::move(line));
  }
}

void paint_blind(SheetMaker& maker, PaperPoint low, PaperPoint high) {
  constexpr double kHatch_mm = 3;
  const std::vector<PaperPoint> corners = {low, {high.x, low.y}, high, {low.x, high.y}};
  for (Stroke& line : hatch_lines(corners, kHatch_mm, true)) maker.draw(std::move(line));
  maker.draw(rectangle_stroke(low, high, LineClass::hatch));
  constexpr double kWords_mm = 2.4;
  const PaperPoint middle = {(low.x + high.x) / 2, (low.y + high.y) / 2};
  const double half = text_width_mm("blind", kWords_mm) / 2 + 1;
  Stroke ground =
      rectangle_stroke({middle.x - half, middle.y - 1.6}, {middle.x + half, middle.y + 2.6}, LineClass::hatch);
  ground.tone = PaperColour{255, 255, 255};
  maker.draw(std::move(ground));
  maker.write({"blind", {middle.x, middle.y - 0.4}, kWords_mm, Anchor::middle, false, false});
}

void write_head(SheetMaker& maker, const UnrolledPanel& panel, double width_deg, PaperPoint low,
                PaperPoint high) {
  const std::string number = fmt::format("P{:02}", panel.number);
  const std::string full = fmt::format("{}, {}\u00B0", number, shortest(width_deg));
  const double room = high.x - low.x;
  const bool fits = text_width_mm(full, kHead_mm) < room;
  maker.write({fits ? full : number, {(low.x + high.x) / 2, high.y + 1.8}, kHead_mm, Anchor::middle});
}

/// Prisms in the order of painting: the widest first, so that the hole of a ring is filled by what stands in
/// it.
std::vector<const UnrolledPrism*> widest_first(const UnrolledPanel& panel) {
  std::vector<std::pair<double, const UnrolledPrism*>> sized;
  for (const UnrolledPrism& prism : panel.prisms) {
    if (prism.loops.empty()) continue;
    sized.push_back({area(extent_of(outlines_of(prism, 0.1))), &prism});
  }
  std::ranges::stable_sort(sized, std::greater<>(), [](const auto& one) { return one.first; });
  std::vector<const UnrolledPrism*> order;
  for (const auto& [size, prism] : sized) order.push_back(prism);
  return order;
}

}  // namespace

PanelMarks place_marks(const UnrolledPanel& panel, double paper_per_mm) {
  PanelMarks marks;
  for (std::size_t i = 0; i < panel.prisms.size(); ++i) {
    const UnrolledPrism& prism = panel.prisms[i];
    const auto outlines = outlines_of(prism, kPaperChord_mm / paper_per_mm);
    marks.inside.push_back(prism.loops.empty() ? std::nullopt : fit_inside(prism, outlines, paper_per_mm));
    if (!marks.inside.back()) marks.beside.push_back(i);
  }
  std::ranges::stable_sort(marks.beside, std::greater<>(),
                           [&](std::size_t i) { return panel.prisms[i].right.v; });
  return marks;
}

PanelRoom room_of(const UnrolledPanel& panel, const MarksPart& part, double paper_per_mm) {
  PanelRoom room;
  room.wide = std::max(kLeastWide_mm, paper_per_mm * (panel.high.u - panel.low.u)) + 2 * kTick_mm;
  if (part.count > 0) room.wide += kLeader_mm + kColumn_mm;
  room.high = std::max(paper_per_mm * (panel.high.v - panel.low.v), column_high_mm(part.count));
  return room;
}

double column_high_mm(std::size_t marks) { return kPitch_mm * static_cast<double>(marks); }

std::size_t column_holds(double high_mm) { return static_cast<std::size_t>(high_mm / kPitch_mm); }

void paint_panel(SheetMaker& maker, const UnrolledPanel& panel, double width_deg, const PlateMap& map,
                 const StageByMark& stages) {
  const PaperPoint low = map.at(panel.low);
  const PaperPoint high = map.at(panel.high);
  if (panel.blind) {
    paint_blind(maker, low, high);
  } else {
    for (const UnrolledPrism* prism : widest_first(panel))
      paint_prism(maker, *prism, map, stages.stage_of(prism->mark));
  }
  maker.line({low.x - kTick_mm, map.origin.y}, {low.x - 0.3, map.origin.y});
  maker.line({high.x + 0.3, map.origin.y}, {high.x + kTick_mm, map.origin.y});
  write_head(maker, panel, width_deg, low, high);
}

void write_signs(SheetMaker& maker, const UnrolledPanel& panel, const PlateMap& map,
                 const StageByMark& stages) {
  for (const UnrolledPrism& prism : panel.prisms) {
    const Stage stage = stages.stage_of(prism.mark);
    const auto outlines = outlines_of(prism, kPaperChord_mm / map.paper_per_mm);
    for (const double size : {2.0, kLeastMark_mm}) {
      const WordsRoom room = words_room(text_width_mm(sign_of(stage), size, true), size);
      if (!lies_inside(outlines, prism.middle, room.wide / map.paper_per_mm, room.high / map.paper_per_mm))
        continue;
      const PaperPoint middle = map.at(prism.middle);
      maker.write({sign_of(stage), {middle.x, base_line(middle.y, size)}, size, Anchor::middle, false, true});
      break;
    }
  }
}

void write_marks(SheetMaker& maker, const UnrolledPanel& panel, const PanelMarks& marks, const MarksPart& part,
                 const PlateMap& map, const StageByMark& stages) {
  for (std::size_t i = 0; part.from == 0 && i < panel.prisms.size(); ++i) {
    const UnrolledPrism& prism = panel.prisms[i];
    if (marks.inside[i]) write_inside(maker, prism, *marks.inside[i], map, stages.stage_of(prism.mark));
  }
  std::vector<double> wished;
  for (std::size_t i = 0; i < part.count; ++i) {
    const UnrolledPrism& prism = panel.prisms[marks.beside[part.from + i]];
    wished.push_back(base_line(map.at(prism.right).y, kBeside_mm));
  }
  const double low = map.at(panel.low).y;
  const double high = map.at(panel.high).y;
  const double over = std::max(0.0, column_high_mm(part.count) - (high - low)) / 2;
  const auto heights =
      spread_heights(wished, kPitch_mm, low - over + kTail_mm, high + over - kPitch_mm + kTail_mm);
  for (std::size_t i = 0; i < part.count; ++i) {
    const UnrolledPrism& prism = panel.prisms[marks.beside[part.from + i]];
    write_beside(maker, prism, map, map.at(panel.high).x, heights[i], stages.stage_of(prism.mark));
  }
}

}  // namespace prismwright
