#include "core/papers/flash_figure.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace prismwright {

namespace {

constexpr double kHead = 1.18;  ///< of the axis over the peak
constexpr std::size_t kMostLabels = 8;

using Points = std::vector<PlotPoint>;

/// The curve over a span that may reach beyond one turn.
Points over(const Rhythm& rhythm, double from_s, double to_s) {
  Points points;
  for (const double shift : {-rhythm.turn_s, 0.0, rhythm.turn_s}) {
    for (std::size_t i = 0; i < rhythm.light.s.size(); ++i) {
      const double at = rhythm.light.s[i] + shift;
      if (at >= from_s && at <= to_s && (points.empty() || at > points.back().x + 1e-9))
        points.push_back({at, rhythm.light.cd[i]});
    }
  }
  return points;
}

/// Where the period is begun so that no flash is cut in two: in the middle of the longest dark.
double start_of(const Rhythm& rhythm) {
  if (rhythm.flashes.empty()) return 0;
  double widest = -1, start = 0;
  for (std::size_t i = 0; i < rhythm.flashes.size(); ++i) {
    const Flash& flash = rhythm.flashes[i];
    const bool last = i + 1 == rhythm.flashes.size();
    const double next = last ? rhythm.flashes.front().start_s + rhythm.period_s : rhythm.flashes[i + 1].start_s;
    if (next - flash.end_s <= widest) continue;
    widest = next - flash.end_s;
    start = (flash.end_s + next) / 2;
  }
  return start - rhythm.period_s * std::floor(start / rhythm.period_s);
}

void draw_turning(SheetMaker& maker, const PaperBox& room, const Rhythm& rhythm, double size_mm) {
  const double span = rhythm.period_s > 0 ? rhythm.period_s : rhythm.turn_s;
  const double from = rhythm.period_s > 0 ? start_of(rhythm) : 0;
  // Axis times run from nought; where that lies in the turn does not matter to an observer.
  Points points = over(rhythm, from - 0.01 * span, from + 1.01 * span);
  for (PlotPoint& point : points) point.x -= from;
  const std::string words =
      rhythm.period_s > 0 ? "time over one period, s (begun in the dark)" : "time over one turn, s";
  PlotFrame plot(maker, room, {0, span, words}, {0, kHead * rhythm.peak_cd, "intensity, cd"}, size_mm, 10, 4);
  plot.curve(points, PlotFrame::Ground::below);
  if (rhythm.steady || rhythm.flashes.size() > kMostLabels) return;
  for (const Flash& flash : rhythm.flashes) {
    const double shift = span * std::floor((flash.peak_s - from) / span);
    const double level = kHalfPeak * flash.peak_cd;
    plot.span({flash.half_start_s - from - shift, level}, {flash.half_end_s - from - shift, level},
              fmt::format("{:.2f} s at half", flash.length_s()));
  }
}

void draw_standing(SheetMaker& maker, const PaperBox& room, const LightReport& light, double size_mm) {
  double low = 1e300, high = -1e300, peak = 0;
  std::vector<Points> curves;
  for (const PanelCurve& panel : light.curves) {
    if (panel.cd.empty()) continue;
    Points points;
    for (std::size_t i = 0; i < panel.cd.size(); ++i)
      points.push_back(
          {panel.axis_deg + panel.from_deg + static_cast<double>(i) * panel.step_deg, panel.cd[i]});
    for (const PlotPoint& point : points) peak = std::max(peak, point.y);
    low = std::min(low, points.front().x);
    high = std::max(high, points.back().x);
    curves.push_back(std::move(points));
  }
  PlotFrame plot(
      maker, room,
      {low, std::max(high, low + 1e-3), "azimuth round the lens, anticlockwise from the axis of panel 1, deg"},
      {0, kHead * peak, "each panel, cd"}, size_mm, 10, 4);
  for (const Points& points : curves) plot.curve(points, PlotFrame::Ground::none);
}

}  // namespace

bool has_flash_figure(const LightReport& light) {
  if (light.rhythm.turn_s > 0) return light.rhythm.light.s.size() > 1 && light.rhythm.peak_cd > 0;
  return std::ranges::any_of(light.curves, [](const PanelCurve& panel) {
    return std::ranges::any_of(panel.cd, [](double cd) { return cd > 0; });
  });
}

void draw_flash(SheetMaker& maker, const PaperBox& room, const LightReport& light, double size_mm) {
  if (!has_flash_figure(light)) return;
  if (light.rhythm.turn_s > 0) {
    draw_turning(maker, room, light.rhythm, size_mm);
  } else {
    draw_standing(maker, room, light, size_mm);
  }
}

}  // namespace prismwright
