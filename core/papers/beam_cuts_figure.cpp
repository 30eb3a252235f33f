#include "core/papers/beam_cuts_figure.h"

#include <fmt/format.h>

#include <algorithm>

namespace prismwright {

namespace {

constexpr double kWorthSeeing = 0.02;  ///< of the peak
constexpr double kHead = 1.15;         ///< of the axis over the peak
constexpr double kLevelShare = 0.56;   ///< of the figure's width for the level cut

using Points = std::vector<PlotPoint>;

Points level_cut(const BeamMap& beam) {
  Points points;
  for (int i = 0; i < beam.grid.azimuths; ++i)
    points.push_back({beam.grid.azimuth_deg(i), beam.at(i, beam.peak_elevation)});
  return points;
}

Points upright_cut(const BeamMap& beam) {
  Points points;
  for (int k = 0; k < beam.grid.elevations; ++k)
    points.push_back({beam.grid.elevation_deg(k), beam.at(beam.peak_azimuth, k)});
  return points;
}

/// The part that is worth seeing, with some of its width on both sides.
PlotSpan seen(const Points& cut, double peak_cd, const std::string& words) {
  double low = cut.back().x, high = cut.front().x;
  for (const PlotPoint& point : cut) {
    if (point.y < kWorthSeeing * peak_cd) continue;
    low = std::min(low, point.x);
    high = std::max(high, point.x);
  }
  const double room = std::max(0.5, 0.25 * (high - low));
  low = std::max(low - room, cut.front().x);
  high = std::min(high + room, cut.back().x);
  return {low, std::max(high, low + 1e-3), words};
}

Points swapped(const Points& points) {
  Points other;
  for (const PlotPoint& point : points) other.push_back({point.y, point.x});
  return other;
}

std::string width_words(double from, double to) { return fmt::format("{:.2f} deg", to - from); }

void draw_level(SheetMaker& maker, const PaperBox& room, const Points& cut, double peak_cd, double size_mm) {
  PlotFrame plot(maker, room, seen(cut, peak_cd, "level cut: azimuth from the panel's axis, deg"),
                 {0, kHead * peak_cd, "intensity, cd"}, size_mm);
  plot.curve(cut, PlotFrame::Ground::below);
  if (const LevelWidth half = width_at(cut, peak_cd / 2); half.whole)
    plot.span({half.from, peak_cd / 2}, {half.to, peak_cd / 2}, width_words(half.from, half.to));
}

void draw_upright(SheetMaker& maker, const PaperBox& room, const Points& cut, double peak_cd, double size_mm) {
  PlotFrame plot(maker, room, {0, kHead * peak_cd, "upright cut: intensity, cd"},
                 seen(cut, peak_cd, "elevation, deg"), size_mm, 4, 6);
  plot.curve(swapped(cut), PlotFrame::Ground::beside);
  if (const LevelWidth half = width_at(cut, peak_cd / 2); half.whole)
    plot.span({peak_cd / 2, half.from}, {peak_cd / 2, half.to}, width_words(half.from, half.to));
}

}  // namespace

void draw_beam_cuts(SheetMaker& maker, const PaperBox& room, const LightReport& light, double size_mm) {
  const BeamMap& beam = light.beam;
  if (!(beam.peak_cd > 0) || beam.cd.size() != beam.grid.size() || beam.cd.empty()) return;
  const double parting = room.low.x + kLevelShare * (room.high.x - room.low.x);
  draw_level(maker, {room.low, {parting, room.high.y}}, level_cut(beam), beam.peak_cd, size_mm);
  draw_upright(maker, {{parting + 2 * size_mm, room.low.y}, room.high}, upright_cut(beam), beam.peak_cd,
               size_mm);
}

}  // namespace prismwright
