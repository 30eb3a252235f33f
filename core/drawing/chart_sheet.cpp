#include "core/drawing/chart_sheet.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/drawing/chart_layout.h"
#include "core/drawing/dimension_line.h"
#include "core/drawing/stage_legend.h"

namespace prismwright {

namespace {

/// What all sheets of the chart are drawn from.
struct ChartView {
  const LensPlan& plan;
  const std::vector<UnrolledPanel>& panels;
  const StageByMark& stages;
  const HouseWords& words;
};

enum class Written { signs, marks };

UntitledSheet draw_sheet(const ChartView& view, const ChartSheets& chart, std::size_t which, Written written) {
  SheetMaker maker(chart.size);
  const ChartRooms rooms = chart_rooms(chart.size);
  for (const PanelSpot& spot : chart.sheets[which]) {
    const UnrolledPanel& panel = view.panels[spot.panel];
    const PlateMap map = {spot.axis, chart.scale.paper_per_mm};
    const double width = view.plan.values.panels[static_cast<std::size_t>(panel.number - 1)].width_deg;
    paint_panel(maker, panel, width, map, view.stages);
    if (written == Written::signs)
      write_signs(maker, panel, map, view.stages);
    else
      write_marks(maker, panel, chart.marks[spot.panel], spot.part, map, view.stages);
  }
  scale_bar(maker, rooms.scale_bar, chart.scale.paper_per_mm, view.words.inches);
  return {std::move(maker), "", chart.scale.words};
}

void write_words(UntitledSheet& sheet, const std::string& words) {
  constexpr double kSize_mm = 2.4;
  const PaperBox frame = sheet.maker.frame();
  const PaperPoint place = chart_rooms(sheet.maker.size()).words;
  sheet.maker.write({shortened(words, kSize_mm, frame.high.x - place.x - 3), place, kSize_mm, Anchor::left});
}

UntitledSheet whole_chart(const ChartView& view, const ChartSheets& chart, Written written) {
  UntitledSheet sheet = draw_sheet(view, chart, 0, written);
  sheet.subject = "Panel chart: the lens unrolled";
  std::vector<std::string> marks;
  for (const PlannedPrism& prism : view.plan.prisms) marks.push_back(prism.mark);
  const StageCounts counts = count_stages(view.stages, marks);
  draw_stage_legend(sheet.maker, chart_rooms(chart.size).legend, counts.all);
  write_words(sheet, fmt::format("{} prisms as seen from outside. Tone and sign tell how far each has come.",
                                 counts.total));
  return sheet;
}

std::string panels_words(const ChartView& view, const std::vector<PanelSpot>& spots) {
  const int first = view.panels[spots.front().panel].number;
  const int last = view.panels[spots.back().panel].number;
  if (first == last) return fmt::format("panel {}", first);
  return fmt::format("panels {} to {}", first, last);
}

UntitledSheet marks_sheet(const ChartView& view, const ChartSheets& chart, std::size_t which) {
  UntitledSheet sheet = draw_sheet(view, chart, which, Written::marks);
  const std::string panels = panels_words(view, chart.sheets[which]);
  sheet.subject = "Panel chart: marks of " + panels;
  draw_stage_legend(sheet.maker, chart_rooms(chart.size).legend, std::nullopt);
  write_words(sheet, "Every mark with the sign of its stage, as seen from outside.");
  return sheet;
}

bool all_inside(const ChartSheets& chart) {
  return std::ranges::all_of(chart.marks, [](const PanelMarks& marks) { return marks.beside.empty(); });
}

Problem too_large(const LensPlan& plan) {
  return request_problem(
      "scale", "sheet",
      fmt::format("Unrolled, a lens of {:.0f} mm focal distance is larger than the sheet even at {}. "
                  "Choose a larger sheet.",
                  plan.values.brief.focal_mm, drawing_scales().back().words));
}

Outcome<Drawing> draw_on(const ChartView& view, const ChartSheets& chart, Paper paper) {
  std::vector<UntitledSheet> sheets;
  if (all_inside(chart)) {
    sheets.push_back(whole_chart(view, chart, Written::marks));
    return titled(std::move(sheets), view.words);
  }
  const auto marked = lay_out_panels(view.panels, paper);
  if (!marked) return too_large(view.plan);
  sheets.push_back(whole_chart(view, chart, Written::signs));
  for (std::size_t i = 0; i < marked->sheets.size(); ++i) sheets.push_back(marks_sheet(view, *marked, i));
  return titled(std::move(sheets), view.words);
}

}  // namespace

Outcome<Drawing> chart_sheets(const LensPlan& plan, const StageByMark& stages, const HouseWords& words) {
  if (plan.prisms.empty()) {
    return request_problem("prisms", "chart",
                           "The lens has no prisms, so there is nothing to chart. Give a panel its glass.");
  }
  const auto panels = unrolled(plan);
  const ChartView view{plan, panels, stages, words};
  const auto chart = lay_out_chart(panels, words.paper.value_or(Paper::a4));
  if (!words.paper && (!chart || !all_inside(*chart))) {
    const auto larger = lay_out_chart(panels, Paper::a3);
    return larger ? draw_on(view, *larger, Paper::a3) : too_large(plan);
  }
  return chart ? draw_on(view, *chart, words.paper.value_or(Paper::a4)) : too_large(plan);
}

}  // namespace prismwright
