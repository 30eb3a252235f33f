#include "core/works/master_sheet.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/drawing/dimension_line.h"
#include "core/drawing/hatch.h"
#include "core/drawing/lengths.h"
#include "core/drawing/plate_view.h"
#include "core/drawing/section_images.h"
#include "core/drawing/title_block.h"
#include "core/works/section_corners.h"

namespace prismwright {

namespace {

constexpr double kLetter_mm = 3;
constexpr double kTolerance_mm = 0.01;
constexpr double kHatch_mm = 2.5;

PlateExtent extent_of(const Profile& profile) {
  PlateExtent extent{{1e30, 1e30}, {-1e30, -1e30}};
  for (const SectionPoint p : polygon_of(profile, 0.1)) {
    extent.low = {std::min(extent.low.u, p.r), std::min(extent.low.v, p.z)};
    extent.high = {std::max(extent.high.u, p.r), std::max(extent.high.v, p.z)};
  }
  return extent;
}

/// Letters outside the glass, along the line that halves the corner.
void letter_corners(SheetMaker& maker, const Profile& profile, const PaperMap& map) {
  const SectionPoint middle = centroid(profile);
  for (const SectionCorner& corner : lettered_corners(profile)) {
    const PaperPoint p = map.at(corner.place);
    const double out = std::atan2(corner.place.z - middle.z, corner.place.r - middle.r);
    std::vector<PaperPoint> places;
    for (const double away : {4.0, 5.5, 7.0, 9.0, 12.0}) {
      for (const double aside : {0.0, 0.4, -0.4, 0.8, -0.8}) {
        places.push_back(
            {p.x + away * std::cos(out + aside), p.y + away * std::sin(out + aside) - 0.35 * kLetter_mm});
      }
    }
    maker.write_at_free({corner.letter, {}, kLetter_mm, Anchor::middle, false, true}, places);
  }
}

void draw_section(SheetMaker& maker, const PlannedPrism& prism, const PlannedPrism& stocked,
                  const PaperMap& map) {
  maker.draw(outline_stroke(prism.profile, map, kTolerance_mm));
  for (Stroke& line : hatch_lines(map.at(polygon_of(prism.profile, 0.02)), kHatch_mm, false)) {
    maker.draw(std::move(line));
  }
  Stroke casting = outline_stroke(stocked.profile, map, kTolerance_mm);
  casting.line = LineClass::ray;
  maker.draw(std::move(casting));
  const auto wall = map.at(polygon_of(stocked.profile, 0.05));
  for (std::size_t i = 0; i < wall.size(); ++i) maker.keep_clear(wall[i], wall[(i + 1) % wall.size()]);
}

std::vector<std::string> sheet_lines(const std::vector<MasterMeasure>& measures, const WorksSettings& settings,
                                     const MasterSheetWords& words, const LengthWords& lengths) {
  std::vector<std::string> lines = {"#master as printed / casting / prism"};
  MasterMeasure::Kind kind = MasterMeasure::Kind::width;
  const char* heads[] = {"#widths, ", "#angles inside, deg", "#radii, ", "#lengths, "};
  bool first = true;
  for (const MasterMeasure& m : measures) {
    if (first || m.kind != kind) {
      const std::string head = heads[static_cast<int>(m.kind)];
      lines.push_back(m.kind == MasterMeasure::Kind::angle ? head : head + lengths.unit());
    }
    first = false;
    kind = m.kind;
    const auto number = [&](double v) {
      return kind == MasterMeasure::Kind::angle ? decimals(v, 2) : lengths.plain(v);
    };
    lines.push_back(
        fmt::format("{}: {} / {} / {}", m.name, number(m.master), number(m.casting), number(m.prism)));
  }
  lines.push_back("");
  lines.push_back(
      fmt::format("stock {} {} on {}", lengths.plain(settings.stock_mm), lengths.unit(),
                  settings.stock_faces == StockFaces::all ? "all faces but the lands" : "the optical faces"));
  lines.push_back(fmt::format("shrinkage {} % length, {} % depth, {} % height",
                              shortest(settings.shrink_length_percent), shortest(settings.shrink_depth_percent),
                              shortest(settings.shrink_height_percent)));
  lines.insert(lines.end(), words.notes.begin(), words.notes.end());
  return lines;
}

std::string marks_words(const std::vector<std::string>& marks) {
  if (marks.empty()) return "";
  return marks.size() == 1 ? marks.front() : fmt::format("{} and {} more", marks.front(), marks.size() - 1);
}

}  // namespace

Sheet master_sheet(const PlannedPrism& prism, const PlannedPrism& stocked, const WorksSettings& settings,
                   const MasterSheetWords& words) {
  const LengthWords lengths{words.inches};
  const PlateLayout layout = lay_out_plate(extent_of(stocked.profile), words.paper);
  const PaperMap map{layout.map.origin, layout.map.paper_per_mm};
  SheetMaker maker(layout.size);
  draw_section(maker, prism, stocked, map);
  letter_corners(maker, stocked.profile, map);
  write_column(maker, layout.column,
               sheet_lines(master_measures(prism, stocked, settings), settings, words, lengths));
  const PaperBox frame = maker.frame();
  maker.line({layout.column.low.x, layout.column.low.y}, {layout.column.low.x, layout.column.high.y});
  scale_bar(maker, {frame.low.x + 6, frame.low.y + SheetRooms::title_block + 3}, map.paper_per_mm,
            words.inches);
  draw_title_block(maker, {clean_words(words.title),
                           fmt::format("master {}: section at its middle, casting dashed", words.name),
                           {{{"master", words.name},
                             {"prisms", marks_words(words.marks)},
                             {"count", std::to_string(std::max<std::size_t>(1, words.marks.size()))},
                             {"scale", layout.scale},
                             {"lengths", words.inches ? "inches" : "millimetres"},
                             {"date", words.date},
                             {"resin", shortened(settings.resin, 2.5, 30)},
                             {"lot", shortened(settings.resin_batch, 2.5, 30)}}}});
  return maker.take();
}

}  // namespace prismwright
