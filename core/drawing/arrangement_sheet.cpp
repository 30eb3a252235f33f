#include "core/drawing/arrangement_sheet.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/drawing/arrangement_views.h"
#include "core/drawing/dimension_line.h"
#include "core/drawing/plate_view.h"

namespace prismwright {

namespace {

PaperBox around(const PaperBox& box, const LineView& view) {
  return {{std::min(box.low.x, view.low.x), std::min(box.low.y, view.low.y)},
          {std::max(box.high.x, view.high.x), std::max(box.high.y, view.high.y)}};
}

ArrangementReach reach_of(const ArrangementParts& parts) {
  const double r = parts.radius_mm();
  ArrangementReach reach;
  reach.elevation = around({{-r, parts.low_z()}, {r, parts.high_z()}}, parts.views.elevation);
  reach.plan = around({{-r, -r}, {r, r}}, parts.views.plan);
  reach.section_r = reach_of(parts.plan.section, images_of(parts.plan.section)).outer_r;
  return reach;
}

/// Widths of the panels: one where all are alike, else all in their order.
std::string panels_words(const LensValues& values) {
  const auto& panels = values.panels;
  const auto is_alike = [&](const Panel& panel) {
    return std::abs(panel.width_deg - panels.front().width_deg) < 1e-9;
  };
  std::string words = fmt::format("{}: ", panels.size());
  if (panels.size() == 1) {
    words = fmt::format("1, of {}\u00B0", shortest(panels.front().width_deg));
  } else if (std::ranges::all_of(panels, is_alike)) {
    words += fmt::format("each {}\u00B0", shortest(panels.front().width_deg));
  } else {
    for (const Panel& panel : panels)
      words += fmt::format("{}{}\u00B0", &panel == &panels.front() ? "" : ", ", shortest(panel.width_deg));
  }
  for (std::size_t i = 0; i < panels.size(); ++i)
    if (panels[i].blind) words += fmt::format("; {} blind", i + 1);
  return words;
}

std::vector<std::string> prism_lines(const LensPlan& plan) {
  std::vector<std::string> lines = {fmt::format("#Prisms: {}", plan.prisms.size())};
  for (const ZoneKind kind : {ZoneKind::centre, ZoneKind::ring, ZoneKind::upper, ZoneKind::lower}) {
    const auto count = std::ranges::count(plan.prisms, kind, &PlannedPrism::kind);
    if (count > 0) lines.push_back(fmt::format("{} {}", count, name_of(kind)));
  }
  return lines;
}

std::string door_words(const LensValues& values) {
  if (values.frame.door_panel == 0) return "none";
  return fmt::format("panel {}, hinge on the {} as seen from the lamp", values.frame.door_panel,
                     values.frame.door_hinge == DoorHinge::left ? "left" : "right");
}

std::vector<std::string> column_lines(const LensPlan& plan, const HouseWords& words) {
  const LensValues& values = plan.values;
  const LengthWords lengths{words.inches};
  std::vector<std::string> lines = {
      "#" + words.order, values.brief.work == Work::belt ? "belt" : "bull's-eye",
      fmt::format("focal distance {} {}", lengths.plain(words.focal_mm), lengths.unit()), "#Panels",
      panels_words(values)};
  for (std::string& line : prism_lines(plan)) lines.push_back(std::move(line));
  const auto say = [&](const char* heading, const std::string& said) {
    if (said.empty()) return;
    lines.push_back(heading);
    lines.push_back(said);
  };
  say("#Character wanted", values.brief.character);
  say("#Material, index", words.material);
  say("#Door", door_words(values));
  say("#For", words.client);
  return lines;
}

/// Height of the column with every line broken to its width, as write_column breaks them.
double column_high(const std::vector<std::string>& lines) {
  constexpr double kMuch_mm = 1e4;
  const PaperBox column = {{0, 0}, {ArrangementRooms::column, kMuch_mm}};
  constexpr double kPitch_mm = 3.6;
  constexpr double kPad_mm = 10;
  return kPad_mm + kPitch_mm * static_cast<double>(column_rows(column, lines));
}

/// Scale bar and note come first: what is drawn later keeps off them.
void begin(SheetMaker& maker, const ArrangementParts& parts) {
  const PaperBox frame = maker.frame();
  const PaperPoint foot = {frame.low.x + 6, frame.low.y + SheetRooms::title_block + 3};
  scale_bar(maker, foot, parts.layout.scale.paper_per_mm, parts.lengths.inches);
  maker.write({fmt::format("Lengths in {}. \u00D8: circles about the lens axis, dashed in the plan.",
                           parts.lengths.inches ? "inches" : "mm"),
               {frame.high.x - 3, foot.y},
               2.2,
               Anchor::right});
}

Problem too_large(const ArrangementParts& parts) {
  return request_problem(
      "scale", "sheet",
      fmt::format("The lens is {:.0f} mm high and {:.0f} mm across: even at {} its arrangement is larger than "
                  "the sheet. Choose a larger sheet.",
                  parts.high_z() - parts.low_z(), 2 * parts.radius_mm(), drawing_scales().back().words));
}

Drawing draw(const ArrangementParts& parts, const std::vector<std::string>& lines, const HouseWords& words) {
  std::vector<UntitledSheet> sheets;
  const char* scale = parts.layout.scale.words;
  sheets.push_back({SheetMaker(parts.layout.size), "General arrangement", scale});
  begin(sheets.front().maker, parts);
  draw_elevation(sheets.front().maker, parts);
  draw_half_section(sheets.front().maker, parts);
  if (parts.layout.two_sheets) {
    sheets.front().subject = "General arrangement: elevation and half section";
    sheets.push_back({SheetMaker(parts.layout.size), "General arrangement: plan", scale});
    begin(sheets.back().maker, parts);
  }
  SheetMaker& last = sheets.back().maker;
  draw_arrangement_plan(last, parts);
  write_column(last, parts.layout.column, lines);
  return titled(std::move(sheets), words);
}

}  // namespace

Outcome<Drawing> arrangement_sheet(const LensPlan& plan, const FramePlan& frame, const ArrangementViews& views,
                                   const HouseWords& words) {
  if (plan.prisms.empty()) {
    return request_problem("prisms", "arrangement",
                           "The lens has no prisms, so there is nothing to draw. Give a panel its glass.");
  }
  ArrangementParts parts{plan, frame, views, {}, glass_over_all(plan), frame_over_all(frame), {words.inches}};
  const auto lines = column_lines(plan, words);
  const auto layout = lay_out_arrangement(reach_of(parts), column_high(lines), words.paper.value_or(Paper::a3));
  if (!layout) return too_large(parts);
  parts.layout = *layout;
  return draw(parts, lines, words);
}

}  // namespace prismwright
