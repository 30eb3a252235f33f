#include "core/drawing/sheet_layout.h"

#include <algorithm>

#include "core/drawing/sheet_maker.h"

namespace prismwright {

namespace {

using Rooms = SheetRooms;

/// Without a paper asked for, A4 is enough down to this scale.
constexpr double kSmallestOnA4 = 0.1;

std::optional<SheetLayout> on_sheet(const SectionReach& reach, SheetSize size) {
  const PaperBox frame = SheetMaker(size).frame();
  const double wide = frame.high.x - frame.low.x - Rooms::heights - Rooms::leaders - Rooms::marks;
  const double high =
      frame.high.y - frame.low.y - Rooms::title_block - Rooms::scale_bar - Rooms::lower - Rooms::upper;
  for (const DrawingScale& scale : drawing_scales()) {
    const double spare_wide = wide - scale.paper_per_mm * reach.outer_r;
    const double spare_high = high - scale.paper_per_mm * (reach.high_z - reach.low_z);
    if (spare_wide < 0 || spare_high < 0) continue;
    const double low = frame.low.y + Rooms::title_block + Rooms::scale_bar + Rooms::lower + spare_high / 2;
    const PaperPoint focus = {frame.low.x + Rooms::heights + spare_wide / 2,
                              low - scale.paper_per_mm * reach.low_z};
    return SheetLayout{size, scale, {focus, scale.paper_per_mm}};
  }
  return std::nullopt;
}

std::optional<SheetLayout> on_paper(const SectionReach& reach, Paper paper) {
  const auto upright = on_sheet(reach, {paper, false});
  const auto lying = on_sheet(reach, {paper, true});
  if (!upright || !lying) return upright ? upright : lying;
  return lying->scale.paper_per_mm > upright->scale.paper_per_mm ? lying : upright;
}

}  // namespace

const std::vector<DrawingScale>& drawing_scales() {
  static const std::vector<DrawingScale> scales = {
      {"10:1", 10}, {"5:1", 5},    {"2:1", 2},     {"1:1", 1},     {"1:2", 0.5},   {"1:2.5", 0.4},
      {"1:5", 0.2}, {"1:10", 0.1}, {"1:20", 0.05}, {"1:25", 0.04}, {"1:50", 0.02}, {"1:100", 0.01}};
  return scales;
}

const DrawingScale& largest_scale(double wide_mm, double high_mm, double room_wide_mm, double room_high_mm) {
  const std::vector<DrawingScale>& scales = drawing_scales();
  const auto found = std::ranges::find_if(scales, [&](const DrawingScale& scale) {
    return scale.paper_per_mm * wide_mm <= room_wide_mm && scale.paper_per_mm * high_mm <= room_high_mm;
  });
  return found == scales.end() ? scales.back() : *found;
}

std::optional<SheetLayout> lay_out(const SectionReach& reach, std::optional<Paper> paper) {
  if (paper) return on_paper(reach, *paper);
  const auto small = on_paper(reach, Paper::a4);
  if (small && small->scale.paper_per_mm >= kSmallestOnA4) return small;
  return on_paper(reach, Paper::a3);
}

}  // namespace prismwright
