#include "core/drawing/chart_layout.h"

#include <algorithm>
#include <numeric>

#include "core/drawing/stage_legend.h"

namespace prismwright {

namespace {

constexpr double kPad_mm = 4;
constexpr double kWords_mm = 8;      ///< the line of words at the top
constexpr double kScaleBar_mm = 74;  ///< width kept for it
constexpr double kLeastFoot_mm = 10;
constexpr double kBetween_mm = 4;  ///< panels of a row
constexpr std::size_t kMostRows = 4;

double wide_of(const PaperBox& box) { return box.high.x - box.low.x; }
double high_of(const PaperBox& box) { return box.high.y - box.low.y; }

/// Something to be set in rows: a panel with a part of its column.
struct Block {
  PanelSpot spot;
  PanelRoom room;
};

/// The axes of a row's blocks, side by side in the middle of the room, below `top`; all focal planes level.
void set_row(std::vector<Block>& row, const std::vector<UnrolledPanel>& panels, const PaperBox& room,
             double top, double paper_per_mm) {
  double wide = kBetween_mm * static_cast<double>(row.size() - 1);
  double high = 0;
  for (const Block& block : row) {
    wide += block.room.wide;
    high = std::max(high, block.room.high);
  }
  double left = room.low.x + (wide_of(room) - wide) / 2;
  for (Block& block : row) {
    const UnrolledPanel& panel = panels[block.spot.panel];
    const double drawn = paper_per_mm * (panel.high.v - panel.low.v);
    // A panel narrower than its head stands in the middle below it.
    const double bare = room_of(panel, {}, paper_per_mm).wide;
    const double aside = (bare - paper_per_mm * (panel.high.u - panel.low.u)) / 2;
    block.spot.axis = {left + aside - paper_per_mm * panel.low.u,
                       top - kPanelHead_mm - (high - drawn) / 2 - paper_per_mm * panel.high.v};
    left += block.room.wide + kBetween_mm;
  }
}

/// Rows of blocks that fit the width, each block in the order given.
std::vector<std::vector<Block>> rows_of(const std::vector<Block>& blocks, double wide) {
  std::vector<std::vector<Block>> rows;
  double used = 0;
  for (const Block& block : blocks) {
    if (rows.empty() || used + kBetween_mm + block.room.wide > wide) {
      rows.emplace_back();
      used = -kBetween_mm;
    }
    used += kBetween_mm + block.room.wide;
    rows.back().push_back(block);
  }
  return rows;
}

double row_high(const std::vector<Block>& row) {
  double high = 0;
  for (const Block& block : row) high = std::max(high, block.room.high);
  return high + kPanelHead_mm;
}

/// Rows filled into sheets from the top down, in the middle of what they leave free.
std::vector<std::vector<PanelSpot>> sheets_of(std::vector<std::vector<Block>> rows,
                                              const std::vector<UnrolledPanel>& panels, const PaperBox& room,
                                              double paper_per_mm) {
  std::vector<std::vector<PanelSpot>> sheets;
  for (std::size_t from = 0; from < rows.size();) {
    double used = row_high(rows[from]);
    std::size_t to = from + 1;
    while (to < rows.size() && used + row_high(rows[to]) <= high_of(room)) used += row_high(rows[to++]);
    double top = room.high.y - (high_of(room) - used) / 2;
    sheets.emplace_back();
    for (; from < to; ++from) {
      set_row(rows[from], panels, room, top, paper_per_mm);
      for (const Block& block : rows[from]) sheets.back().push_back(block.spot);
      top -= row_high(rows[from]);
    }
  }
  return sheets;
}

/// Blocks for every panel without its column.
std::vector<Block> bare_blocks(const std::vector<UnrolledPanel>& panels, double paper_per_mm) {
  std::vector<Block> blocks;
  for (std::size_t i = 0; i < panels.size(); ++i)
    blocks.push_back({{i, {}, {}}, room_of(panels[i], {}, paper_per_mm)});
  return blocks;
}

std::vector<PanelMarks> marks_at(const std::vector<UnrolledPanel>& panels, double paper_per_mm) {
  std::vector<PanelMarks> marks;
  for (const UnrolledPanel& panel : panels) marks.push_back(place_marks(panel, paper_per_mm));
  return marks;
}

std::optional<ChartSheets> chart_on(const std::vector<UnrolledPanel>& panels, SheetSize size,
                                    const DrawingScale& scale) {
  const PaperBox room = chart_rooms(size).panels;
  const auto blocks = bare_blocks(panels, scale.paper_per_mm);
  for (std::size_t count = 1; count <= std::min(kMostRows, panels.size()); ++count) {
    const std::size_t each = (panels.size() + count - 1) / count;
    std::vector<std::vector<Block>> rows;
    for (std::size_t from = 0; from < blocks.size(); from += each) {
      const auto end = std::min(from + each, blocks.size());
      rows.emplace_back(blocks.begin() + static_cast<std::ptrdiff_t>(from),
                        blocks.begin() + static_cast<std::ptrdiff_t>(end));
    }
    const bool too_wide =
        std::ranges::any_of(rows, [&](const auto& row) { return rows_of(row, wide_of(room)).size() > 1; });
    const bool broad =
        std::ranges::any_of(blocks, [&](const Block& block) { return block.room.wide > wide_of(room); });
    if (too_wide || broad) continue;
    auto sheets = sheets_of(std::move(rows), panels, room, scale.paper_per_mm);
    double first_high = 0;
    for (const Block& block : blocks) first_high = std::max(first_high, block.room.high);
    if (sheets.size() > 1 || first_high + kPanelHead_mm > high_of(room)) continue;
    return ChartSheets{size, scale, {}, std::move(sheets)};
  }
  return std::nullopt;
}

/// Panels with their marks; a column too long for the sheet goes on beside another drawing of its panel.
std::optional<ChartSheets> panels_on(const std::vector<UnrolledPanel>& panels,
                                     const std::vector<PanelMarks>& marks, SheetSize size,
                                     const DrawingScale& scale) {
  const PaperBox room = chart_rooms(size).panels;
  const std::size_t most = column_holds(high_of(room) - kPanelHead_mm);
  std::vector<Block> blocks;
  for (std::size_t i = 0; i < panels.size(); ++i) {
    if (panels[i].prisms.empty()) continue;
    std::size_t from = 0;
    do {
      const MarksPart part = {from, std::min(most, marks[i].beside.size() - from)};
      blocks.push_back({{i, part, {}}, room_of(panels[i], part, scale.paper_per_mm)});
      if (blocks.back().room.wide > wide_of(room) || blocks.back().room.high + kPanelHead_mm > high_of(room))
        return std::nullopt;
      from += part.count;
    } while (from < marks[i].beside.size());
  }
  return ChartSheets{size, scale, marks,
                     sheets_of(rows_of(blocks, wide_of(room)), panels, room, scale.paper_per_mm)};
}

/// What a way to lay out the panels costs the reader: a sheet to turn, marks to be followed along leaders, and
/// leaders that must spread because the column is longer than its panel is high.
double cost_of(const std::vector<UnrolledPanel>& panels, const ChartSheets& chart) {
  constexpr double kAllBeside = 6;
  constexpr double kTwiceAsLong = 4;
  double beside = 0;
  double all = 0;
  double spread = 0;
  for (std::size_t i = 0; i < panels.size(); ++i) {
    const double high = chart.scale.paper_per_mm * (panels[i].high.v - panels[i].low.v);
    beside += static_cast<double>(chart.marks[i].beside.size());
    all += static_cast<double>(chart.marks[i].inside.size());
    if (high > 0) spread = std::max(spread, column_high_mm(chart.marks[i].beside.size()) / high - 1);
  }
  return static_cast<double>(chart.sheets.size()) + kAllBeside * beside / std::max(1.0, all) +
         kTwiceAsLong * spread;
}

}  // namespace

ChartRooms chart_rooms(SheetSize size) {
  const PaperBox frame = SheetMaker(size).frame();
  const double foot = frame.low.y + SheetRooms::title_block;
  const double legend_left = frame.low.x + kScaleBar_mm;
  const double legend_right = frame.high.x - kPad_mm;
  const double high = std::max(kLeastFoot_mm, stage_legend_height_mm(legend_right - legend_left)) + kPad_mm;
  ChartRooms rooms;
  rooms.scale_bar = {frame.low.x + 6, foot + 3};
  rooms.legend = {{legend_left, foot}, {legend_right, foot + high - 2}};
  rooms.panels = {{frame.low.x + kPad_mm, foot + high}, {frame.high.x - kPad_mm, frame.high.y - kWords_mm}};
  rooms.words = {frame.low.x + kPad_mm, frame.high.y - 5};
  return rooms;
}

std::optional<ChartSheets> lay_out_chart(const std::vector<UnrolledPanel>& panels, Paper paper) {
  for (const DrawingScale& scale : drawing_scales()) {
    for (const bool lying : {true, false}) {
      if (auto chart = chart_on(panels, {paper, lying}, scale)) {
        chart->marks = marks_at(panels, scale.paper_per_mm);
        return chart;
      }
    }
  }
  return std::nullopt;
}

std::optional<ChartSheets> lay_out_panels(const std::vector<UnrolledPanel>& panels, Paper paper) {
  constexpr int kMostTried = 4;  ///< smaller scales only send more marks beside
  std::optional<ChartSheets> best;
  int tried = 0;
  for (const DrawingScale& scale : drawing_scales()) {
    if (tried == kMostTried) break;
    const std::vector<PanelMarks> none(panels.size());
    const bool fits =
        panels_on(panels, none, {paper, true}, scale) || panels_on(panels, none, {paper, false}, scale);
    if (!fits) continue;
    const auto marks = marks_at(panels, scale.paper_per_mm);
    for (const bool lying : {true, false}) {
      auto chart = panels_on(panels, marks, {paper, lying}, scale);
      if (chart && (!best || cost_of(panels, *chart) < cost_of(panels, *best))) best = std::move(chart);
    }
    ++tried;
  }
  return best;
}

}  // namespace prismwright
