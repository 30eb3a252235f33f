#include "core/drawing/line_view_drawing.h"

#include <cmath>

namespace prismwright {

namespace {

constexpr double kFinest_mm = 0.03;  ///< a shorter step cannot be seen on paper

Stroke stroke_of(const ViewLine& line, const ViewMap& map) {
  Stroke stroke;
  stroke.line = line.outline ? LineClass::outline : LineClass::thin;
  stroke.start = map.at(line.points.front());
  PaperPoint last = stroke.start;
  for (std::size_t i = 1; i < line.points.size(); ++i) {
    const PaperPoint next = map.at(line.points[i]);
    if (std::hypot(next.x - last.x, next.y - last.y) < kFinest_mm && i + 1 < line.points.size()) continue;
    stroke.steps.push_back({next, 0, {}, 0});
    last = next;
  }
  return stroke;
}

}  // namespace

ViewMap view_in_middle(const LineView& view, double paper_per_mm, const PaperBox& room) {
  return {{(room.low.x + room.high.x) / 2 - paper_per_mm * (view.low.x + view.high.x) / 2,
           (room.low.y + room.high.y) / 2 - paper_per_mm * (view.low.y + view.high.y) / 2},
          paper_per_mm};
}

void draw_line_view(SheetMaker& maker, const LineView& view, const ViewMap& map) {
  for (const ViewLine& line : view.lines) {
    if (line.points.size() < 2) continue;
    Stroke stroke = stroke_of(line, map);
    PaperPoint from = stroke.start;
    for (const PaperStep& step : stroke.steps) {
      maker.keep_clear(from, step.to);
      from = step.to;
    }
    maker.draw(std::move(stroke));
  }
}

}  // namespace prismwright
