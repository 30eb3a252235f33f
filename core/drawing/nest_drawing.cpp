#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/drawing/column_notes.h"
#include "core/drawing/frame_drawings.h"
#include "core/drawing/lengths.h"
#include "core/drawing/part_sheet.h"
#include "core/drawing/plate_view.h"
#include "core/frame/cut_shapes.h"
#include "core/frame/mark_place.h"

namespace prismwright {

namespace {

constexpr double kWords_mm = 2.2;

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
    maker.write_at_free({number, {}, kWords_mm, Anchor::middle}, places);
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
  sheets.push_back({std::move(maker), subject, layout.scale});
  TablePages pages(layout.size.paper);
  for (const TableBlock& block : further) pages.add(block);
  for (SheetMaker& page : pages.take()) sheets.push_back({std::move(page), subject, "none"});
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
    pages.add(words_block("Plates that no sheet takes", nest.too_large));
    for (SheetMaker& page : pages.take())
      sheets.push_back({std::move(page), "Plates that no sheet takes", "none"});
  }
  return titled(std::move(sheets), words);
}

}  // namespace prismwright
