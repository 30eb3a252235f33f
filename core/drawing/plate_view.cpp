#include "core/drawing/plate_view.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/drawing/hatch.h"
#include "core/drawing/table_pages.h"
#include "core/drawing/view_rooms.h"
#include "core/frame/cut_shapes.h"

namespace prismwright {

namespace {

/// Texts keep off the chain.
void keep_clear_of(SheetMaker& maker, const PlateChain& chain, const PlateMap& map) {
  constexpr double kPaperChord_mm = 0.1;
  const PlateOutline corners = flattened(chain, kPaperChord_mm / map.paper_per_mm);
  for (std::size_t i = 0; i < corners.size(); ++i)
    maker.keep_clear(map.at(corners[i]), map.at(corners[(i + 1) % corners.size()]));
}

/// Where a straight line enters and leaves a box, as shares of its length; blank where it passes by.
std::optional<std::pair<double, double>> shares_inside(const PaperBox& box, PaperPoint from, PaperPoint to) {
  double enters = 0;
  double leaves = 1;
  const auto narrow = [&](double start, double way, double low, double high) {
    if (way == 0) {
      if (start < low || start > high) leaves = -1;
      return;
    }
    const double first = (low - start) / way;
    const double second = (high - start) / way;
    enters = std::max(enters, std::min(first, second));
    leaves = std::min(leaves, std::max(first, second));
  };
  narrow(from.x, to.x - from.x, box.low.x, box.high.x);
  narrow(from.y, to.y - from.y, box.low.y, box.high.y);
  if (enters >= leaves) return std::nullopt;
  return std::pair{enters, leaves};
}

/// The line without what of it lies in the box.
void draw_outside(SheetMaker& maker, const Stroke& line, const std::optional<PaperBox>& box) {
  const PaperPoint from = line.start;
  const PaperPoint to = line.steps.front().to;
  const auto inside = box ? shares_inside(*box, from, to) : std::nullopt;
  if (!inside) return maker.draw(line);
  const auto at = [&](double share) {
    return PaperPoint{from.x + share * (to.x - from.x), from.y + share * (to.y - from.y)};
  };
  if (inside->first > 0) maker.line(from, at(inside->first), line.line);
  if (inside->second < 1) maker.line(at(inside->second), to, line.line);
}

/// The name in the middle of the pocket where it lies inside altogether.
std::optional<DrawnText> name_inside(const std::vector<PaperPoint>& polygon, const std::string& name) {
  constexpr double kName_mm = 2.2;
  PaperBox ground = {{1e300, 1e300}, {-1e300, -1e300}};
  PlateOutline outline;
  for (const PaperPoint p : polygon) {
    ground.low = {std::min(ground.low.x, p.x), std::min(ground.low.y, p.y)};
    ground.high = {std::max(ground.high.x, p.x), std::max(ground.high.y, p.y)};
    outline.push_back({p.x, p.y});
  }
  DrawnText text{name, {}, kName_mm, Anchor::middle};
  text.place = {(ground.low.x + ground.high.x) / 2, (ground.low.y + ground.high.y) / 2 - 0.35 * kName_mm};
  const PaperBox box = box_of(text);
  const bool inside = holds(outline, {box.low.x, box.low.y}) && holds(outline, {box.high.x, box.low.y}) &&
                      holds(outline, {box.low.x, box.high.y}) && holds(outline, {box.high.x, box.high.y});
  return inside ? std::optional(text) : std::nullopt;
}

void draw_pocket(SheetMaker& maker, const PlatePocket& pocket, const PlateMap& map, const std::string& name) {
  constexpr double kPaperChord_mm = 0.02;
  constexpr double kHatch_mm = 1.6;
  maker.draw(chain_stroke(pocket.outline, map, LineClass::thin, true));
  keep_clear_of(maker, pocket.outline, map);
  if (name.empty()) return;
  std::vector<PaperPoint> polygon;
  for (const PlatePoint p : flattened(pocket.outline, kPaperChord_mm / map.paper_per_mm))
    polygon.push_back(map.at(p));
  std::optional<PaperBox> gap;
  if (const auto text = name_inside(polygon, name)) {
    gap = box_of(*text);
    maker.write(*text);
  }
  for (const Stroke& line : hatch_lines(polygon, kHatch_mm, false)) draw_outside(maker, line, gap);
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
  const double wide = extent.high.u - extent.low.u;
  const double high = extent.high.v - extent.low.v;
  const ViewLayout layout = lay_out_views(wide, high, {}, paper);
  const PaperBox room = layout.rooms.pictures;
  const double scale = layout.paper_per_mm;
  const PaperPoint origin = {room.low.x + (room.high.x - room.low.x - scale * wide) / 2 - scale * extent.low.u,
                             room.low.y + (room.high.y - room.low.y - scale * high) / 2 - scale * extent.low.v};
  return {layout.size, layout.scale, {origin, scale}, layout.rooms.column};
}

std::vector<PaperPoint> places_round(PaperPoint p, double off, double size_mm, double way) {
  const double eighth = std::acos(-1.0) / 4;
  std::vector<PaperPoint> places;
  for (const double away : {off, off + 2, off + 5, off + 9}) {
    for (const int turn : {0, 1, -1, 2, -2, 3, -3, 4}) {
      const double at = way + turn * eighth;
      places.push_back({p.x + away * std::cos(at), p.y + away * std::sin(at) - 0.35 * size_mm});
    }
  }
  return places;
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
  int number = 0;
  for (const PlatePocket& pocket : blind_pockets(part))
    draw_pocket(maker, pocket, map, hatched ? pocket_name(number++) : "");
  std::vector<PlateChain> cuts = through_cuts(part);
  cuts.push_back(part.outline);
  for (const PlateChain& cut : cuts) {
    maker.draw(chain_stroke(cut, map, LineClass::outline, true));
    keep_clear_of(maker, cut, map);
  }
  for (const PlateHole& hole : part.holes) draw_hole(maker, hole, map);
}

std::string pocket_name(int index) { return fmt::format("p{}", index + 1); }

namespace {

constexpr double kWords_mm = 2.4;
constexpr double kPitch_mm = 3.6;
constexpr double kPad_mm = 3;

double words_room(const PaperBox& column) { return column.high.x - column.low.x - 2 * kPad_mm; }
double first_line(const PaperBox& column) { return column.high.y - kPad_mm - kWords_mm; }

std::vector<std::string> broken_lines(const PaperBox& column, const std::vector<std::string>& lines) {
  std::vector<std::string> broken;
  for (const std::string& line : lines) {
    if (line.empty() || line.find('\t') != std::string::npos) {
      broken.push_back(line);
      continue;
    }
    const bool heading = line.front() == '#';
    for (const std::string& part :
         broken_words(line.substr(heading ? 1 : 0), kWords_mm * (heading ? 1.1 : 1), words_room(column)))
      broken.push_back((heading ? "#" : "") + part);
  }
  return broken;
}

/// The first cell from the left, the others ending at even steps.
void write_cells(SheetMaker& maker, const std::string& line, PaperPoint left, double room) {
  std::vector<std::string> cells(1);
  for (const char letter : line) {
    if (letter == '\t') cells.emplace_back();
    if (letter != '\t') cells.back() += letter;
  }
  const double step = room / static_cast<double>(cells.size());
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const PaperPoint place = {i == 0 ? left.x : left.x + step * static_cast<double>(i + 1), left.y};
    maker.write(
        {shortened(cells[i], kWords_mm, step - 1), place, kWords_mm, i == 0 ? Anchor::left : Anchor::right});
  }
}

}  // namespace

std::size_t column_room(const PaperBox& column) {
  return static_cast<std::size_t>(std::max(1.0, (first_line(column) - column.low.y - kPad_mm) / kPitch_mm));
}

std::size_t column_rows(const PaperBox& column, const std::vector<std::string>& lines) {
  return broken_lines(column, lines).size();
}

void write_column(SheetMaker& maker, const PaperBox& column, const std::vector<std::string>& lines) {
  std::vector<std::string> broken = broken_lines(column, lines);
  const std::size_t fit = column_room(column);
  if (broken.size() > fit) {
    const std::size_t left_out = broken.size() - fit + 1;
    broken.resize(fit - 1);
    broken.push_back(fmt::format("... and {} lines more", left_out));
  }
  for (std::size_t i = 0; i < broken.size(); ++i) {
    const PaperPoint place = {column.low.x + kPad_mm, first_line(column) - kPitch_mm * static_cast<double>(i)};
    if (broken[i].find('\t') != std::string::npos) {
      write_cells(maker, broken[i], place, words_room(column));
      continue;
    }
    const bool heading = !broken[i].empty() && broken[i].front() == '#';
    const std::string words =
        shortened(broken[i].substr(heading ? 1 : 0), kWords_mm, words_room(column), heading);
    maker.write({words, place, kWords_mm, Anchor::left, false, heading});
  }
}

}  // namespace prismwright
