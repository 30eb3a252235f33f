#include "core/drawing/part_sheet.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/base/inches.h"
#include "core/drawing/column_notes.h"
#include "core/drawing/dimension_line.h"
#include "core/drawing/engraved_letters.h"
#include "core/drawing/lengths.h"
#include "core/drawing/part_tables.h"
#include "core/drawing/plate_view.h"
#include "core/frame/cut_shapes.h"
#include "core/frame/cut_words.h"
#include "core/frame/cutter_radius.h"
#include "core/frame/mark_place.h"

namespace prismwright {

namespace {

constexpr double kWords_mm = 2.2;

/// Every hole's name where there is room beside it.
void name_holes(SheetMaker& maker, const FlatPart& part, const PlateMap& map) {
  const std::vector<std::string> names = hole_names(part);
  for (std::size_t i = 0; i < part.holes.size(); ++i) {
    const PlateHole& hole = part.holes[i];
    const double radius = map.paper_per_mm * std::max(hole.diameter_mm, hole.sink_diameter_mm) / 2;
    const double half = text_width_mm(names[i], kWords_mm) / 2;
    std::vector<PaperPoint> places = places_round(map.at(hole.centre), radius + 1 + half, kWords_mm);
    const std::vector<PaperPoint> farther = places_round(map.at(hole.centre), radius + 14 + half, kWords_mm);
    places.insert(places.end(), farther.begin(), farther.end());
    maker.write_at_free({names[i], {}, kWords_mm, Anchor::middle}, places);
  }
}

/// Bores as they would be seen through the brass, dashed, each with its name.
void draw_bores(SheetMaker& maker, const FlatPart& part, const PlateMap& map) {
  const std::vector<std::string> names = bore_names(part);
  for (std::size_t i = 0; i < part.bores.size(); ++i) {
    const PlateBore& bore = part.bores[i];
    const double half = bore.diameter_mm / 2;
    const auto at = [&](double along, double aside) {
      return map.at({bore.from.x + along * bore.along.x - aside * bore.along.y,
                     bore.from.y + along * bore.along.y + aside * bore.along.x});
    };
    const auto draw = [&](PaperPoint from, PaperPoint to, LineClass line) {
      maker.line(from, to, line);
      maker.keep_clear(from, to);
    };
    draw(at(-1, 0), at(bore.depth_mm + 1, 0), LineClass::centre);
    for (const double aside : {-half, half}) draw(at(0, aside), at(bore.depth_mm, aside), LineClass::ray);
    draw(at(bore.depth_mm, -half), at(bore.depth_mm, half), LineClass::ray);
    maker.write_at_free({names[i], {}, kWords_mm, Anchor::middle},
                        places_round(at(bore.depth_mm / 2, 0), map.paper_per_mm * half + 1.6, kWords_mm));
  }
}

/// The place 0, from which others are measured.
void mark_datum(SheetMaker& maker, const FlatPart& part, const PlateMap& map) {
  constexpr double kArm_mm = 3;
  const PlateDatum datum = datum_of(part);
  const PaperPoint p = map.at(datum.origin);
  const auto cross = [&](PaperPoint from, PaperPoint to) {
    maker.line(from, to, LineClass::centre);
    maker.keep_clear(from, to);
  };
  cross({p.x - kArm_mm, p.y}, {p.x + kArm_mm, p.y});
  cross({p.x, p.y - kArm_mm}, {p.x, p.y + kArm_mm});
  maker.draw(circle_stroke(p, 0.9, LineClass::thin));
  std::vector<PaperPoint> places = {{p.x - 2, p.y - 3.4}};
  for (const PaperPoint place : places_round(p, 2.4, 2.6)) places.push_back(place);
  DrawnText nought{"0", {}, 2.6, Anchor::middle};
  nought.bold = true;
  maker.write_at_free(std::move(nought), places);
}

std::string circle_words(const PlateChain& chain, const LengthWords& lengths) {
  if (is_round(chain))
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
    lines.push_back(row_letter(i, false) + ": " + hole_words(rows[i], lengths));
  const std::vector<HoleRow> bores = bore_rows(part);
  if (!bores.empty()) lines.insert(lines.end(), {"", "#drilled into the edges after the cut"});
  for (std::size_t i = 0; i < bores.size(); ++i)
    lines.push_back(row_letter(i, true) + ": " + hole_words(bores[i], lengths));
}

std::vector<std::string> part_lines(const FlatPart& part, std::size_t count, const LengthWords& lengths,
                                    const std::optional<EngravedMark>& engraved) {
  std::vector<std::string> lines = {fmt::format("#{}, {}", name_of(part.kind), name_of(part.making))};
  lines.push_back(
      fmt::format("{}, {} {} thick", name_of(part.metal), lengths.plain(part.thickness_mm), lengths.unit()));
  lines.push_back(pieces_words(count, mass_g(part), lengths.inches));
  const double radius = cutter_radius_mm(part);
  if (std::isfinite(radius))
    lines.push_back(fmt::format("cutter radius up to {} {}", lengths.plain(radius), lengths.unit()));
  lines.push_back(
      engraved ? fmt::format("mark engraved {} {} high", lengths.plain(engraved->height_mm), lengths.unit())
               : "no room to engrave the mark");
  if (!part.outline.empty()) lines.push_back("outline: " + circle_words(part.outline, lengths));
  for (const PlateChain& opening : through_cuts(part))
    lines.push_back("opening: " + circle_words(opening, lengths));
  lines.push_back(datum_of(part).words);
  add_pocket_lines(part, lengths, lines);
  add_hole_lines(part, lengths, lines);
  return lines;
}

}  // namespace

std::string subject_of(const std::string& mark, PartKind kind, std::size_t count) {
  return fmt::format("{}: {}, {} off", mark, name_of(kind), count);
}

std::string pieces_words(std::size_t count, double mass_g, bool inches) {
  constexpr double kGramsPerKilogram = 1000;
  const std::string mass = mass_g < kGramsPerKilogram ? fmt::format("{:.1f} g", mass_g)
                                                      : fmt::format("{:.3f} kg", mass_g / kGramsPerKilogram);
  return fmt::format("{} {}, {}{} each", count, count == 1 ? "piece" : "pieces", mass,
                     inches ? fmt::format(" ({:.3f} lb)", mass_g / kGramsPerPound) : "");
}

void draw_overall(SheetMaker& maker, const PlateExtent& extent, const PlateMap& map, bool inches) {
  constexpr double kAway_mm = 10;
  constexpr double kOff_mm = 1;
  constexpr double kOver_mm = 1.5;
  const LengthWords lengths{inches};
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

void begin_picture(SheetMaker& maker, double column_x, double paper_per_mm, bool inches) {
  const PaperBox frame = maker.frame();
  maker.line({column_x, frame.low.y + SheetRooms::title_block}, {column_x, frame.high.y});
  scale_bar(maker, {frame.low.x + 6, frame.low.y + SheetRooms::title_block + 3}, paper_per_mm, inches);
}

Drawing part_sheet(const FlatPart& part, const std::vector<std::string>& marks, const HouseWords& words,
                   const std::vector<Landing>& landings) {
  const LengthWords lengths{words.inches};
  const std::vector<std::string> all = marks.empty() ? std::vector{part.mark} : marks;
  const PlateExtent extent = part.outline.empty() ? PlateExtent{} : extent_of(part.outline);
  const PlateLayout layout = lay_out_plate(extent, words.paper);
  SheetMaker maker(layout.size);
  begin_picture(maker, layout.column.low.x, layout.map.paper_per_mm, words.inches);
  draw_plate(maker, part, layout.map, true);
  const auto engraved = place_of_mark(part, all.front());
  if (engraved) {
    for (const PlateChain& stroke : strokes_of(*engraved)) {
      maker.draw(chain_stroke(stroke, layout.map, LineClass::hatch, false));
      for (const PlateStep& step : stroke) maker.keep_clear(layout.map.at(step.from), layout.map.at(step.to));
    }
  }
  if (!part.outline.empty()) draw_overall(maker, extent, layout.map, words.inches);
  mark_datum(maker, part, layout.map);
  draw_bores(maker, part, layout.map);
  name_holes(maker, part, layout.map);
  std::vector<ColumnNote> notes = {marks_note(all)};
  for (ColumnNote& note : part_notes(part, landings, lengths)) notes.push_back(std::move(note));
  const std::vector<TableBlock> further =
      fill_column(maker, layout.column, part_lines(part, all.size(), lengths, engraved), notes);
  const std::string subject = subject_of(all.front(), part.kind, all.size());
  return picture_and_tables({std::move(maker), subject, layout.scale, name_of(part.metal)}, further, words);
}

}  // namespace prismwright
