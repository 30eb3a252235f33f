#include "core/drawing/plate_view.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/drawing/hatch.h"
#include "core/drawing/table_pages.h"
#include "core/frame/cut_shapes.h"

namespace prismwright {

namespace {

constexpr double kColumn_mm = 64;
constexpr double kDimensions_mm = 18;  ///< left of and below the picture
constexpr double kOff_mm = 8;          ///< above and right of it
constexpr double kScaleBar_mm = 12;
constexpr double kSmallestOnA4 = 0.2;

/// The layout on one sheet of paper; blank where the scale is too large.
std::optional<PlateLayout> on_sheet(const PlateExtent& extent, SheetSize size, const DrawingScale& scale) {
  const PaperBox frame = SheetMaker(size).frame();
  const double left = frame.low.x + kDimensions_mm;
  const double low = frame.low.y + SheetRooms::title_block + kScaleBar_mm + kDimensions_mm;
  const double wide = frame.high.x - kColumn_mm - kOff_mm - left;
  const double high = frame.high.y - kOff_mm - low;
  const double spare_wide = wide - scale.paper_per_mm * (extent.high.u - extent.low.u);
  const double spare_high = high - scale.paper_per_mm * (extent.high.v - extent.low.v);
  if (spare_wide < 0 || spare_high < 0) return std::nullopt;
  const PaperPoint origin = {left + spare_wide / 2 - scale.paper_per_mm * extent.low.u,
                             low + spare_high / 2 - scale.paper_per_mm * extent.low.v};
  const PaperBox column = {{frame.high.x - kColumn_mm, frame.low.y + SheetRooms::title_block}, frame.high};
  return PlateLayout{size, scale.words, {origin, scale.paper_per_mm}, column};
}

PlateLayout on_paper(const PlateExtent& extent, Paper paper) {
  for (const DrawingScale& scale : drawing_scales()) {
    for (const bool landscape : {false, true}) {
      if (auto layout = on_sheet(extent, {paper, landscape}, scale)) return std::move(*layout);
    }
  }
  // Larger than ten metres: any scale that holds it.
  const double across = std::max(extent.high.u - extent.low.u, extent.high.v - extent.low.v);
  const double part = std::ceil(across / 80);
  const std::string words = fmt::format("1:{:.0f}", part);
  if (auto layout = on_sheet(extent, {paper, false}, {words.c_str(), 1 / part})) return std::move(*layout);
  return {{paper, false}, words, {{}, 1 / part}, {}};
}

/// Texts keep off the chain.
void keep_clear_of(SheetMaker& maker, const PlateChain& chain, const PlateMap& map) {
  constexpr double kPaperChord_mm = 0.1;
  const PlateOutline corners = flattened(chain, kPaperChord_mm / map.paper_per_mm);
  for (std::size_t i = 0; i < corners.size(); ++i)
    maker.keep_clear(map.at(corners[i]), map.at(corners[(i + 1) % corners.size()]));
}

void draw_pocket(SheetMaker& maker, const PlatePocket& pocket, const PlateMap& map, bool hatched) {
  constexpr double kPaperChord_mm = 0.02;
  constexpr double kHatch_mm = 1.6;
  maker.draw(chain_stroke(pocket.outline, map, LineClass::thin, true));
  keep_clear_of(maker, pocket.outline, map);
  if (!hatched) return;
  std::vector<PaperPoint> polygon;
  for (const PlatePoint p : flattened(pocket.outline, kPaperChord_mm / map.paper_per_mm))
    polygon.push_back(map.at(p));
  for (Stroke& line : hatch_lines(polygon, kHatch_mm, false)) maker.draw(std::move(line));
}

void draw_hole(SheetMaker& maker, const PlateHole& hole, const PlateMap& map) {
  const PaperPoint middle = map.at(hole.centre);
  const double radius = map.paper_per_mm * hole.diameter_mm / 2;
  const double widest = std::max(radius, map.paper_per_mm * hole.sink_diameter_mm / 2);
  maker.draw(circle_stroke(middle, radius, LineClass::outline));
  if (widest > radius) maker.draw(circle_stroke(middle, widest, LineClass::thin));
  maker.keep_clear({middle.x - widest, middle.y}, {middle.x + widest, middle.y});
}

}  // namespace

PlateLayout lay_out_plate(const PlateExtent& extent, std::optional<Paper> paper) {
  if (paper) return on_paper(extent, *paper);
  PlateLayout small = on_paper(extent, Paper::a4);
  return small.map.paper_per_mm >= kSmallestOnA4 ? small : on_paper(extent, Paper::a3);
}

Stroke chain_stroke(const PlateChain& chain, const PlateMap& map, LineClass line, bool closed) {
  Stroke stroke;
  stroke.line = line;
  stroke.closed = closed;
  if (chain.empty()) return stroke;
  stroke.start = map.at(chain.front().from);
  for (const PlateStep& step : chain)
    stroke.steps.push_back(
        {map.at(step.to), step.turn, map.at(step.centre), map.paper_per_mm * step.radius_mm});
  return stroke;
}

void draw_plate(SheetMaker& maker, const FlatPart& part, const PlateMap& map, bool hatched) {
  for (const PlatePocket& pocket : blind_pockets(part)) draw_pocket(maker, pocket, map, hatched);
  std::vector<PlateChain> cuts = through_cuts(part);
  cuts.push_back(part.outline);
  for (const PlateChain& cut : cuts) {
    maker.draw(chain_stroke(cut, map, LineClass::outline, true));
    keep_clear_of(maker, cut, map);
  }
  for (const PlateHole& hole : part.holes) draw_hole(maker, hole, map);
}

void write_column(SheetMaker& maker, const PaperBox& column, const std::vector<std::string>& lines) {
  constexpr double kWords_mm = 2.4;
  constexpr double kPitch_mm = 3.6;
  constexpr double kPad_mm = 3;
  const double room = column.high.x - column.low.x - 2 * kPad_mm;
  std::vector<std::string> broken;
  for (const std::string& line : lines) {
    if (line.empty()) {
      broken.emplace_back();
      continue;
    }
    const bool heading = line.front() == '#';
    for (const std::string& part :
         broken_words(line.substr(heading ? 1 : 0), kWords_mm * (heading ? 1.1 : 1), room))
      broken.push_back((heading ? "#" : "") + part);
  }
  const double top = column.high.y - kPad_mm - kWords_mm;
  const auto fit = static_cast<std::size_t>(std::max(1.0, (top - column.low.y - kPad_mm) / kPitch_mm));
  if (broken.size() > fit) {
    const std::size_t left_out = broken.size() - fit + 1;
    broken.resize(fit - 1);
    broken.push_back(fmt::format("... and {} lines more", left_out));
  }
  for (std::size_t i = 0; i < broken.size(); ++i) {
    const bool heading = !broken[i].empty() && broken[i].front() == '#';
    const std::string words = shortened(broken[i].substr(heading ? 1 : 0), kWords_mm, room, heading);
    maker.write({words,
                 {column.low.x + kPad_mm, top - kPitch_mm * static_cast<double>(i)},
                 kWords_mm,
                 Anchor::left,
                 false,
                 heading});
  }
}

}  // namespace prismwright
