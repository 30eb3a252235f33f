#include "core/drawing/part_sheet.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/drawing/dimension_line.h"
#include "core/drawing/engraved_letters.h"
#include "core/drawing/lengths.h"
#include "core/drawing/plate_view.h"
#include "core/drawing/title_block.h"
#include "core/frame/cut_shapes.h"
#include "core/frame/cut_words.h"
#include "core/frame/mark_place.h"

namespace prismwright {

namespace {

constexpr double kWords_mm = 2.2;

std::string row_letter(std::size_t i) {
  const std::string letter(1, static_cast<char>('A' + i % 26));
  return i < 26 ? letter : letter + std::to_string(i / 26);
}

/// Every hole's letter where there is room beside it.
void letter_holes(SheetMaker& maker, const FlatPart& part, const PlateMap& map) {
  const std::vector<HoleRow> rows = hole_rows(part);
  for (const PlateHole& hole : part.holes) {
    const PaperPoint p = map.at(hole.centre);
    const double off = map.paper_per_mm * std::max(hole.diameter_mm, hole.sink_diameter_mm) / 2 + 1.6;
    std::vector<PaperPoint> places;
    for (const double away : {off, off + 2, off + 5, off + 9}) {
      for (int i = 0; i < 8; ++i) {
        const double way = i * std::acos(-1.0) / 4;
        places.push_back({p.x + away * std::cos(way), p.y + away * std::sin(way) - 0.35 * kWords_mm});
      }
    }
    const std::string letter = row_letter(row_of(rows, hole));
    maker.write_at_free({letter, {}, kWords_mm, Anchor::middle, false, false}, places);
  }
}

std::string circle_words(const PlateChain& chain, const LengthWords& lengths) {
  const bool round = !chain.empty() && std::ranges::all_of(chain, [&](const PlateStep& step) {
    return !step.straight() && step.radius_mm == chain.front().radius_mm;
  });
  if (round)
    return fmt::format("round, {} {} across", lengths.plain(2 * chain.front().radius_mm), lengths.unit());
  const PlateExtent box = extent_of(chain);
  return fmt::format("{} by {} {}", lengths.plain(box.high.u - box.low.u),
                     lengths.plain(box.high.v - box.low.v), lengths.unit());
}

std::string hole_words(const HoleRow& row, const LengthWords& lengths) {
  std::string words = fmt::format("{} x {} {}", row.count, lengths.plain(row.diameter_mm), lengths.unit());
  if (row.depth_mm > 0) words += fmt::format(" by {} deep", lengths.plain(row.depth_mm));
  if (!row.use.empty()) words += ", " + row.use;
  if (row.sink_diameter_mm > 0) {
    words += fmt::format(", sunk 90\u00B0 to {} from the {}", lengths.plain(row.sink_diameter_mm),
                         row.sunk_in_back ? "back" : "front");
  }
  return words;
}

void add_pocket_lines(const FlatPart& part, const LengthWords& lengths, std::vector<std::string>& lines) {
  const std::vector<PlatePocket> pockets = blind_pockets(part);
  if (pockets.empty()) return;
  lines.insert(lines.end(), {"", "#pockets"});
  for (const double depth : pocket_depths_mm(part)) {
    const auto count = std::ranges::count(pockets, depth, &PlatePocket::depth_mm);
    lines.push_back(
        fmt::format("{} blind, {} {} deep from the front", count, lengths.plain(depth), lengths.unit()));
  }
}

void add_hole_lines(const FlatPart& part, const LengthWords& lengths, std::vector<std::string>& lines) {
  const std::vector<HoleRow> rows = hole_rows(part);
  if (!rows.empty()) lines.insert(lines.end(), {"", "#holes right through"});
  for (std::size_t i = 0; i < rows.size(); ++i)
    lines.push_back(row_letter(i) + ": " + hole_words(rows[i], lengths));
  const std::vector<HoleRow> bores = bore_rows(part);
  if (!bores.empty()) lines.insert(lines.end(), {"", "#drilled into the edges after the cut"});
  for (const HoleRow& row : bores) lines.push_back(hole_words(row, lengths));
}

std::vector<std::string> part_lines(const FlatPart& part, const std::vector<std::string>& marks,
                                    const LengthWords& lengths, const std::optional<EngravedMark>& engraved) {
  std::vector<std::string> lines = {"#" + short_marks(marks),
                                    fmt::format("{}, {}", name_of(part.kind), name_of(part.making))};
  lines.push_back(
      fmt::format("{}, {} {} thick", name_of(part.metal), lengths.plain(part.thickness_mm), lengths.unit()));
  lines.push_back(
      fmt::format("{} {}, {:.1f} g each", marks.size(), marks.size() == 1 ? "piece" : "pieces", mass_g(part)));
  const double radius = least_inside_radius_mm(part);
  if (std::isfinite(radius))
    lines.push_back(fmt::format("least inside radius {} {}", lengths.plain(radius), lengths.unit()));
  lines.push_back(
      engraved ? fmt::format("mark engraved {} {} high", lengths.plain(engraved->height_mm), lengths.unit())
               : "no room to engrave the mark");
  lines.push_back("outline: " + circle_words(part.outline, lengths));
  for (const PlateChain& opening : through_cuts(part))
    lines.push_back("opening: " + circle_words(opening, lengths));
  add_pocket_lines(part, lengths, lines);
  add_hole_lines(part, lengths, lines);
  return lines;
}

void draw_overall(SheetMaker& maker, const PlateExtent& extent, const PlateMap& map,
                  const LengthWords& lengths) {
  constexpr double kAway_mm = 10;
  constexpr double kOff_mm = 1;
  constexpr double kOver_mm = 1.5;
  const PaperPoint low = map.at(extent.low);
  const PaperPoint high = map.at(extent.high);
  const auto extension = [&](PaperPoint from, PaperPoint to) {
    maker.line(from, to);
    maker.keep_clear(from, to);
  };
  const double x = low.x - kAway_mm;
  const double y = low.y - kAway_mm;
  for (const double at : {low.y, high.y}) extension({low.x - kOff_mm, at}, {x - kOver_mm, at});
  for (const double at : {low.x, high.x}) extension({at, low.y - kOff_mm}, {at, y - kOver_mm});
  level_dimension(maker, low.x, high.x, y, lengths.plain(extent.high.u - extent.low.u));
  upright_dimension(maker, low.y, high.y, x, lengths.plain(extent.high.v - extent.low.v));
}

void finish(SheetMaker& maker, const PlateLayout& layout, const TitleCells& cells, const LengthWords& lengths) {
  const PaperBox frame = maker.frame();
  maker.line({layout.column.low.x, layout.column.low.y}, {layout.column.low.x, layout.column.high.y});
  scale_bar(maker, {frame.low.x + 6, frame.low.y + SheetRooms::title_block + 3}, layout.map.paper_per_mm,
            lengths.inches);
  draw_title_block(maker, cells);
}

/// Numbers of the plates, each where its mark would be engraved, else beside its middle.
void number_plates(SheetMaker& maker, const NestSheet& sheet, const std::vector<FlatPart>& flats,
                   const PlateMap& map) {
  for (std::size_t i = 0; i < sheet.parts.size(); ++i) {
    const FlatPart laid = laid_out(flats[sheet.parts[i].flat], sheet.parts[i]);
    const std::string number = std::to_string(i + 1);
    const PlateExtent box = extent_of(laid.outline);
    PlatePoint middle = {(box.low.u + box.high.u) / 2, (box.low.v + box.high.v) / 2};
    if (const auto mark = place_of_mark(laid, number)) middle = mark->middle;
    const PaperPoint p = map.at(middle);
    std::vector<PaperPoint> places;
    for (int k = 0; k < 25; ++k) {
      const double away = 0.9 * std::sqrt(static_cast<double>(k));
      places.push_back({p.x + away * std::cos(2.4 * k), p.y + away * std::sin(2.4 * k) - 0.35 * kWords_mm});
    }
    maker.write_at_free({number, {}, kWords_mm, Anchor::middle, false, false}, places);
  }
}

std::vector<std::string> nest_lines(const NestSheet& sheet) {
  std::vector<std::string> lines = {fmt::format("#{} {} mm, {:.0f} % used", name_of(sheet.metal),
                                                shortest(sheet.thickness_mm), 100 * sheet.used_share)};
  for (std::size_t i = 0; i < sheet.parts.size(); ++i)
    lines.push_back(fmt::format("{}: {}", i + 1, sheet.parts[i].mark));
  return lines;
}

}  // namespace

Sheet part_sheet(const FlatPart& part, const PartSheetWords& words) {
  const LengthWords lengths{words.inches};
  const std::vector<std::string> marks = words.marks.empty() ? std::vector{part.mark} : words.marks;
  const PlateExtent extent = part.outline.empty() ? PlateExtent{} : extent_of(part.outline);
  const PlateLayout layout = lay_out_plate(extent, words.paper);
  SheetMaker maker(layout.size);
  draw_plate(maker, part, layout.map, true);
  const auto engraved = place_of_mark(part, marks.front());
  if (engraved) {
    for (const PlateChain& stroke : strokes_of(*engraved))
      maker.draw(chain_stroke(stroke, layout.map, LineClass::hatch, false));
  }
  if (!part.outline.empty()) draw_overall(maker, extent, layout.map, lengths);
  letter_holes(maker, part, layout.map);
  write_column(maker, layout.column, part_lines(part, marks, lengths, engraved));
  const std::string thickness = lengths.plain(part.thickness_mm) + " " + lengths.unit();
  finish(maker, layout,
         {clean_words(words.title),
          fmt::format("{}, seen from the front", part.mark),
          {{{"part", name_of(part.kind)},
            {"thickness", thickness},
            {"metal", name_of(part.metal)},
            {"scale", layout.scale},
            {"lengths", words.inches ? "inches" : "millimetres"},
            {"date", words.date},
            {"pieces", std::to_string(marks.size())},
            {"mass each", fmt::format("{:.1f} g", mass_g(part))}}}},
         lengths);
  return maker.take();
}

Sheet nest_sheet(const Nest& nest, std::size_t sheet, const std::vector<FlatPart>& flats,
                 const PartSheetWords& words) {
  const LengthWords lengths{words.inches};
  const NestSheet& laid = nest.sheets.at(sheet);
  const PlateExtent extent = {{0, 0}, {laid.width_mm, laid.height_mm}};
  const PlateLayout layout = lay_out_plate(extent, words.paper);
  SheetMaker maker(layout.size);
  maker.draw(rectangle_stroke(layout.map.at(extent.low), layout.map.at(extent.high), LineClass::frame));
  for (const NestedPart& nested : laid.parts)
    draw_plate(maker, laid_out(flats[nested.flat], nested), layout.map, false);
  draw_overall(maker, extent, layout.map, lengths);
  number_plates(maker, laid, flats, layout.map);
  write_column(maker, layout.column, nest_lines(laid));
  finish(maker, layout,
         {clean_words(words.title),
          "Plates on their sheet",
          {{{"metal", name_of(laid.metal)},
            {"thickness", lengths.plain(laid.thickness_mm) + " " + lengths.unit()},
            {"pieces", std::to_string(laid.parts.size())},
            {"scale", layout.scale},
            {"lengths", words.inches ? "inches" : "millimetres"},
            {"date", words.date},
            {"used", fmt::format("{:.0f} %", 100 * laid.used_share)},
            {"sheet", fmt::format("{} of {}", sheet + 1, nest.sheets.size())}}}},
         lengths);
  return maker.take();
}

}  // namespace prismwright
