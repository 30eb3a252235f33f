#include "geometry/plate_dxf.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/base/angle.h"
#include "core/drawing/lengths.h"
#include "core/frame/cut_shapes.h"
#include "core/frame/cut_words.h"
#include "core/frame/mark_place.h"
#include "geometry/dxf_writer.h"

namespace prismwright {

namespace {

constexpr double kLinesApart = 1.7;

void add_layers(DxfWriter& dxf) {
  dxf.add_layer("CUT", 7);
  dxf.add_layer("POCKET", 5);
  dxf.add_layer("HOLE", 1);
  dxf.add_layer("ENGRAVE", 3);
  dxf.add_layer("NOTE", 8);
}

PlateChain backwards(const PlateChain& chain) {
  PlateChain back;
  for (auto step = chain.rbegin(); step != chain.rend(); ++step)
    back.push_back({step->to, step->from, -step->turn, step->centre, step->radius_mm});
  return back;
}

void add_plate(DxfWriter& dxf, const FlatPart& part) {
  dxf.add_outline("CUT", part.outline);
  for (const PlateChain& cut : through_cuts(part)) dxf.add_outline("CUT", backwards(cut));
  for (const PlatePocket& pocket : blind_pockets(part)) dxf.add_outline("POCKET", backwards(pocket.outline));
  for (const PlateHole& hole : part.holes)
    dxf.add_circle("HOLE", {hole.centre.u, hole.centre.v}, hole.diameter_mm / 2);
}

void add_mark(DxfWriter& dxf, const EngravedMark& mark) {
  for (const PlateChain& stroke : strokes_of(mark)) dxf.add_stroke("ENGRAVE", stroke);
}

double note_height_mm(const PlateExtent& extent) {
  constexpr double kLeast_mm = 2.5;
  constexpr double kMost_mm = 10;
  return std::clamp(0.015 * (extent.high.u - extent.low.u), kLeast_mm, kMost_mm);
}

void add_notes(DxfWriter& dxf, const std::vector<std::string>& lines, const PlateExtent& extent) {
  const double height = note_height_mm(extent);
  double v = extent.low.v - 3 * height;
  for (const std::string& line : lines) {
    dxf.add_text("NOTE", {extent.low.u, v}, height, line);
    v -= kLinesApart * height;
  }
}

/// The mark of a plate as it lies on its sheet.
EngravedMark laid_mark(const EngravedMark& mark, const NestedPart& nested) {
  const double turn = radians(nested.turn_deg);
  EngravedMark laid = mark;
  laid.middle = {std::cos(turn) * mark.middle.u - std::sin(turn) * mark.middle.v + nested.shift.u,
                 std::sin(turn) * mark.middle.u + std::cos(turn) * mark.middle.v + nested.shift.v};
  laid.turn_deg += nested.turn_deg;
  return laid;
}

}  // namespace

std::string plate_dxf(const FlatPart& part, const std::vector<std::string>& marks) {
  DxfWriter dxf;
  add_layers(dxf);
  add_plate(dxf, part);
  std::vector<std::string> lines = cut_notes(part, marks);
  const std::string& words = marks.empty() ? part.mark : marks.front();
  if (const auto mark = place_of_mark(part, words)) {
    add_mark(dxf, *mark);
    lines.push_back("layer ENGRAVE: " + words + " (its own mark on each piece)");
  } else {
    lines.push_back("no room to engrave a mark: tie a label to each piece");
  }
  add_notes(dxf, lines, extent_of(part.outline));
  return dxf.bytes();
}

std::string nest_dxf(const NestSheet& sheet, const std::vector<FlatPart>& flats, const std::string& title) {
  DxfWriter dxf;
  add_layers(dxf);
  dxf.add_layer("SHEET", 9);
  dxf.add_polygon("SHEET",
                  {{0, 0}, {sheet.width_mm, 0}, {sheet.width_mm, sheet.height_mm}, {0, sheet.height_mm}});
  std::vector<std::string> lines = {
      title,
      fmt::format("{}, {} mm thick, sheet {} mm by {} mm, {} pieces, {:.0f} % used", name_of(sheet.metal),
                  shortest(sheet.thickness_mm), shortest(sheet.width_mm), shortest(sheet.height_mm),
                  sheet.parts.size(), 100 * sheet.used_share),
      "all sizes in mm, 1 unit = 1 mm, true edges, kerf is the shop's; front faces up"};
  for (const NestedPart& nested : sheet.parts) {
    const FlatPart& flat = flats[nested.flat];
    add_plate(dxf, laid_out(flat, nested));
    if (const auto mark = place_of_mark(flat, nested.mark)) {
      add_mark(dxf, laid_mark(*mark, nested));
    } else {
      lines.push_back("no room to engrave " + nested.mark + ": tie a label to it");
    }
  }
  add_notes(dxf, lines, {{0, 0}, {sheet.width_mm, sheet.height_mm}});
  return dxf.bytes();
}

}  // namespace prismwright
