#include <cmath>

#include <fmt/format.h>

#include "core/drawing/arrangement_views.h"
#include "core/drawing/cut_metal.h"
#include "core/drawing/dimension_line.h"
#include "core/drawing/hatch.h"
#include "core/drawing/section_view.h"

namespace prismwright {

namespace {

constexpr double kWords_mm = 2.5;
constexpr double kOff_mm = 1;
constexpr double kOver_mm = 1.5;
constexpr double kNear_mm = 10;
constexpr double kFar_mm = 19;

void draw_plates(SheetMaker& maker, const ArrangementParts& parts) {
  constexpr double kHatch_mm = 0.7;
  const PaperMap& map = parts.layout.section;
  const PanelPlace& panel = parts.plan.panels[static_cast<std::size_t>(section_panel(parts.plan) - 1)];
  for (const CutPlate& plate : cut_plates(parts.frame, panel.axis_deg)) {
    const PaperPoint low = map.at(plate.low);
    const PaperPoint high = map.at(plate.high);
    const std::vector<PaperPoint> corners = {low, {high.x, low.y}, high, {low.x, high.y}};
    for (Stroke& line : hatch_lines(corners, kHatch_mm, true)) maker.draw(std::move(line));
    maker.draw(rectangle_stroke(low, high, LineClass::thin));
    for (std::size_t i = 0; i < corners.size(); ++i)
      maker.keep_clear(corners[i], corners[(i + 1) % corners.size()]);
  }
}

/// Heights of the glass over and under the focal plane, right of the section.
void draw_heights(SheetMaker& maker, const ArrangementParts& parts, const SectionReach& reach) {
  const PaperMap& map = parts.layout.section;
  const double right = map.at(SectionPoint{reach.outer_r, 0}).x;
  const double top = map.at(SectionPoint{0, reach.high_z}).y;
  const double bottom = map.at(SectionPoint{0, reach.low_z}).y;
  const PaperPoint highest = map.at(SectionPoint{reach.high_r, reach.high_z});
  const PaperPoint lowest = map.at(SectionPoint{reach.low_r, reach.low_z});
  for (const PaperPoint glass : {highest, lowest}) {
    maker.line({glass.x + kOff_mm, glass.y}, {right + kFar_mm + kOver_mm, glass.y});
    maker.keep_clear({glass.x + kOff_mm, glass.y}, {right + kFar_mm + kOver_mm, glass.y});
  }
  maker.line({right + kOff_mm, map.focus.y}, {right + kNear_mm + kOver_mm, map.focus.y});
  upright_dimension(maker, bottom, map.focus.y, right + kNear_mm, parts.lengths.plain(-reach.low_z));
  upright_dimension(maker, map.focus.y, top, right + kNear_mm, parts.lengths.plain(reach.high_z));
  upright_dimension(maker, bottom, top, right + kFar_mm, parts.lengths.plain(reach.high_z - reach.low_z));
}

void draw_breadths(SheetMaker& maker, const ArrangementParts& parts, const SectionReach& reach) {
  constexpr double kBelowPlane_mm = 8;
  const PaperMap& map = parts.layout.section;
  const double inner = map.at(SectionPoint{parts.plan.values.brief.focal_mm, 0}).x;
  level_dimension(maker, map.focus.x, inner, map.focus.y - kBelowPlane_mm,
                  parts.lengths.plain(parts.plan.values.brief.focal_mm));
  const double outer = map.at(SectionPoint{reach.outer_r, 0}).x;
  const double bottom = map.at(SectionPoint{0, parts.low_z()}).y;
  const double y = bottom - kNear_mm + 1;
  maker.line({outer, bottom - kOff_mm}, {outer, y - kOver_mm});
  maker.keep_clear({outer, bottom - kOff_mm}, {outer, y - kOver_mm});
  level_dimension(maker, map.focus.x, outer, y, parts.lengths.plain(reach.outer_r));
}

}  // namespace

void draw_half_section(SheetMaker& maker, const ArrangementParts& parts) {
  constexpr double kTolerance_mm = 0.02;
  constexpr double kBeyond_mm = 5;
  const PaperMap& map = parts.layout.section;
  const auto images = images_of(parts.plan.section);
  const SectionReach reach = reach_of(parts.plan.section, images);
  const SheetLayout layout = {parts.layout.size, parts.layout.scale, map};
  draw_glass(maker, {parts.plan.section, images, reach, layout, parts.lengths, kTolerance_mm});
  draw_plates(maker, parts);

  const double bottom = map.at(SectionPoint{0, parts.low_z()}).y;
  const double top = map.at(SectionPoint{0, parts.high_z()}).y;
  maker.line({map.focus.x, bottom - kNear_mm}, {map.focus.x, top + kBeyond_mm}, LineClass::centre);
  maker.keep_clear({map.focus.x, bottom - kNear_mm}, {map.focus.x, top + kBeyond_mm});
  maker.draw(circle_stroke(map.focus, 0.8, LineClass::thin));
  draw_breadths(maker, parts, reach);
  draw_heights(maker, parts, reach);
  const double half = text_width_mm("focus", kWords_mm) / 2 + 1.5;
  maker.write_at_free({"focus", {}, kWords_mm, Anchor::middle},
                      {{map.focus.x + half, map.focus.y + 1.4}, {map.focus.x - half, map.focus.y - 3.2}});
  const double middle = (map.focus.x + map.at(SectionPoint{reach.outer_r, 0}).x) / 2;
  maker.write_at_free(
      {fmt::format("Half section, panel {}", section_panel(parts.plan)), {}, kWords_mm, Anchor::middle},
      {{middle, top + kBeyond_mm + 1.5}});
}

}  // namespace prismwright
