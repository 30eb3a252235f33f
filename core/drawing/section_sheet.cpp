#include "core/drawing/section_sheet.h"

#include <fmt/format.h>

#include "core/drawing/dimension_line.h"
#include "core/drawing/section_view.h"
#include "core/drawing/title_block.h"
#include "core/drawing/zone_tables.h"

namespace prismwright {

namespace {

SheetMaker whole_section(const SheetView& view) {
  SheetMaker maker(view.layout.size);
  const PaperBox frame = maker.frame();
  const PaperPoint foot = {frame.low.x + 6, frame.low.y + SheetRooms::title_block + 3};
  scale_bar(maker, foot, view.layout.map.paper_per_mm, view.lengths.inches);
  maker.write({fmt::format("Section through the lens axis. Lengths in {}, elevations in degrees.",
                           view.lengths.inches ? "inches" : "mm"),
               {frame.high.x - 3, foot.y},
               2.2,
               Anchor::right,
               false,
               false});
  draw_glass(maker, view);
  draw_zone_marks(maker, view);
  draw_dimensions(maker, view);
  draw_axes_and_limits(maker, view);
  return maker;
}

std::vector<SheetMaker> tables(const SheetView& view) {
  TablePages pages(view.layout.size.paper);
  pages.add(zone_list(view.section, view.images, view.lengths, view.tolerance_mm));
  for (const SectionImage& image : view.images) {
    if (image.lower_image && !image.zone->lower_image) continue;
    pages.add(outline_table(image, view.lengths, view.tolerance_mm));
  }
  for (const SectionRib& rib : view.section.ribs) pages.add(rib_table(rib, view.lengths));
  return pages.take();
}

TitleWords title_words(const Section& section, const SectionSheetSettings& settings, const SheetView& view) {
  const LengthWords lengths = view.lengths;
  TitleWords words;
  words.title = settings.title;
  words.order = settings.order;
  words.focal_distance = lengths.plain(section.input.focal_mm) + " " + lengths.unit();
  words.material =
      fmt::format("{}{}{:.5f}", settings.material, settings.material.empty() ? "" : ", ", section.input.index);
  words.units = lengths.inches ? "inches" : "millimetres";
  words.date = settings.date;
  words.revision = settings.revision;
  return words;
}

Problem too_large(const SectionReach& reach) {
  return request_problem("scale", "sheet",
                         fmt::format("The section is {:.0f} mm high and {:.0f} mm deep: even at {} it is "
                                     "larger than the sheet. Choose a larger sheet, or write it as DXF.",
                                     reach.high_z - reach.low_z, reach.outer_r, drawing_scales().back().words));
}

}  // namespace

Done check_arc_tolerance(double tolerance_mm) {
  if (tolerance_mm >= kFinestArcTolerance_mm && tolerance_mm <= kCoarsestArcTolerance_mm) return {};
  return request_problem("tolerance", "tolerance-mm",
                         fmt::format("Arcs cannot be drawn within {} mm of a true curve: the tolerance must "
                                     "lie between {} and {} mm. Give one between them.",
                                     tolerance_mm, kFinestArcTolerance_mm, kCoarsestArcTolerance_mm));
}

Outcome<Drawing> section_sheet(const Section& section, const SectionSheetSettings& settings) {
  if (const Done sound = check_arc_tolerance(settings.tolerance_mm); !sound) return sound.problem();
  if (section.zones.empty()) {
    return request_problem("zones", "section",
                           "The section has no zones, so there is nothing to draw. Give it a band.");
  }
  const auto images = images_of(section, settings.whole_rings);
  const SectionReach reach = reach_of(section, images);
  const auto layout = lay_out(reach, settings.paper);
  if (!layout) return too_large(reach);
  const SheetView view{section, images, reach, *layout, {settings.inches}, settings.tolerance_mm};

  std::vector<SheetMaker> makers = {whole_section(view)};
  for (SheetMaker& page : tables(view)) makers.push_back(std::move(page));
  TitleWords words = title_words(section, settings, view);
  Drawing drawing{clean_words(settings.title), settings.date, {}};
  for (std::size_t i = 0; i < makers.size(); ++i) {
    words.subject = i == 0 ? "Section of the lens" : "Section of the lens: corners and curves";
    words.scale = i == 0 ? layout->scale.words : "none";
    words.sheet = fmt::format("{} of {}", i + 1, makers.size());
    draw_title_block(makers[i], words);
    drawing.sheets.push_back(makers[i].take());
  }
  return drawing;
}

}  // namespace prismwright
