#include <algorithm>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "core/drawing/column_notes.h"
#include "core/drawing/frame_drawings.h"
#include "core/drawing/length_sentences.h"
#include "core/drawing/lengths.h"
#include "core/drawing/part_sheet.h"
#include "core/drawing/plate_view.h"
#include "core/frame/cut_shapes.h"
#include "core/frame/mark_place.h"
#include "core/frame/plate_polygons.h"

namespace prismwright {

namespace {

constexpr double kWords_mm = 2.2;
constexpr double kChord_mm = 0.1;
constexpr int kPlaces = 100;  ///< that are tried for a number, 9 mm about its plate's middle

/// Inside the outline and in none of the openings.
bool is_brass(const FlatPart& part, PlatePoint place) {
  const auto inside = [&](const PlateChain& chain) { return holds(flattened(chain, kChord_mm), place); };
  return inside(part.outline) && std::ranges::none_of(through_cuts(part), inside);
}

/// Words over lines: on ground of their own, at the first place that no other words take, with a leader from
/// what they name where they do not stand on it.
bool write_on_white(SheetMaker& maker, const DrawnText& text, const std::vector<PaperPoint>& places,
                    std::optional<PaperPoint> named = {}) {
  constexpr double kRim_mm = 0.3;
  constexpr PaperColour kWhite = {255, 255, 255};
  for (const PaperPoint place : places) {
    if (!maker.write_at_free(text, {place})) continue;
    DrawnText there = text;
    there.place = place;
    const PaperBox box = box_of(there);
    if (named) maker.line(*named, {place.x, place.y + 0.35 * text.size_mm}, LineClass::hatch);
    Stroke ground = rectangle_stroke({box.low.x - kRim_mm, box.low.y}, {box.high.x + kRim_mm, box.high.y},
                                     LineClass::hatch);
    ground.tone = kWhite;
    maker.draw(std::move(ground));
    return true;
  }
  return false;
}

/// Numbers of the plates, each on its plate: where its mark would be engraved or near it, clear of lines where
/// there is such a place, else in a box; beside a plate too small for that, with a leader.
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
    for (int k = 0; k < kPlaces; ++k) {
      const double away = 0.9 * std::sqrt(static_cast<double>(k));
      places.push_back({p.x + away * std::cos(2.4 * k), p.y + away * std::sin(2.4 * k) - 0.35 * kWords_mm});
    }
    std::vector<PaperPoint> on_plate = places;
    std::erase_if(on_plate, [&](PaperPoint place) {
      return !is_brass(laid, {(place.x - map.origin.x) / map.paper_per_mm,
                              (place.y + 0.35 * kWords_mm - map.origin.y) / map.paper_per_mm});
    });
    const DrawnText text{number, {}, kWords_mm, Anchor::middle};
    if (maker.write_in_the_clear(text, on_plate) || write_on_white(maker, text, on_plate)) continue;
    write_on_white(maker, text, places, p);
  }
}

ColumnNote plates_note(const NestSheet& sheet) {
  constexpr std::size_t kAcross = 4;
  ColumnNote note{"plates by their numbers", {}, {}};
  note.wide.columns.assign(kAcross, {TablePages::kWidth_mm / kAcross});
  note.wide.lines.push_back({TableLine::Kind::heading, {"Plates by their numbers"}});
  for (std::size_t i = 0; i < sheet.parts.size(); ++i) {
    note.lines.push_back(fmt::format("{}: {}", i + 1, sheet.parts[i].mark));
    if (i % kAcross == 0) note.wide.lines.push_back({TableLine::Kind::row, {}});
    note.wide.lines.back().cells.push_back(note.lines.back());
  }
  return note;
}

std::vector<UntitledSheet> nest_sheets(const Nest& nest, std::size_t index, const FramePlan& frame,
                                       const HouseWords& words) {
  const LengthWords lengths{words.inches};
  const NestSheet& sheet = nest.sheets[index];
  const PlateExtent extent = {{0, 0}, {sheet.width_mm, sheet.height_mm}};
  const PlateLayout layout = lay_out_plate(extent, words.paper);
  SheetMaker maker(layout.size);
  begin_picture(maker, layout.column.low.x, layout.map.paper_per_mm, words.inches);
  maker.draw(rectangle_stroke(layout.map.at(extent.low), layout.map.at(extent.high), LineClass::frame));
  for (const NestedPart& nested : sheet.parts)
    draw_plate(maker, laid_out(frame.flats[nested.flat], nested), layout.map, false);
  draw_overall(maker, extent, layout.map, words.inches);
  number_plates(maker, sheet, frame.flats, layout.map);
  const std::string what =
      fmt::format("{}, {} {} thick", name_of(sheet.metal), lengths.plain(sheet.thickness_mm), lengths.unit());
  const std::vector<TableBlock> further =
      fill_column(maker, layout.column,
                  {fmt::format("#sheet {} of {}", index + 1, nest.sheets.size()), what,
                   fmt::format("{} plates, {:.0f} % used", sheet.parts.size(), 100 * sheet.used_share)},
                  {plates_note(sheet)});
  const std::string subject = fmt::format("Plates on sheet {}: {}", index + 1, what);
  std::vector<UntitledSheet> sheets;
  const char* metal = name_of(sheet.metal);
  sheets.push_back({std::move(maker), subject, layout.scale, metal});
  TablePages pages(layout.size.paper);
  for (const TableBlock& block : further) pages.add(block);
  for (SheetMaker& page : pages.take()) sheets.push_back({std::move(page), subject, "none", metal});
  return sheets;
}

}  // namespace

Drawing nest_drawing(const Nest& nest, const FramePlan& frame, const HouseWords& words) {
  std::vector<UntitledSheet> sheets;
  for (std::size_t i = 0; i < nest.sheets.size(); ++i) {
    for (UntitledSheet& sheet : nest_sheets(nest, i, frame, words)) sheets.push_back(std::move(sheet));
  }
  if (!nest.too_large.empty()) {
    TablePages pages(words.paper.value_or(Paper::a4));
    std::vector<std::string> too_large;
    for (const std::string& one : nest.too_large) too_large.push_back(sentence_in({words.inches}, one));
    pages.add(words_block("Plates that no sheet takes", too_large));
    for (SheetMaker& page : pages.take())
      sheets.push_back({std::move(page), "Plates that no sheet takes", "none"});
  }
  return titled(std::move(sheets), words);
}

}  // namespace prismwright
