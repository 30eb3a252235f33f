#include "core/drawing/line_view_drawing.h"

#include <cmath>

namespace prismwright {

namespace {

constexpr double kFinest_mm = 0.03;  ///< a shorter step cannot be seen on paper

LineClass class_of(const ViewLine& line) {
  if (!line.glass) return LineClass::hatch;
  return line.outline ? LineClass::outline : LineClass::thin;
}

Stroke stroke_of(const ViewLine& line, const ViewMap& map) {
  Stroke stroke;
  stroke.line = class_of(line);
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

void draw_line_view(SheetMaker& maker, const LineView& view, const ViewMap& map, bool walls) {
  for (const ViewLine& line : view.lines) {
    if (line.points.size() < 2) continue;
    Stroke stroke = stroke_of(line, map);
    PaperPoint from = stroke.start;
    for (std::size_t i = 0; walls && i < stroke.steps.size(); ++i) {
      maker.keep_clear(from, stroke.steps[i].to);
      from = stroke.steps[i].to;
    }
    maker.draw(std::move(stroke));
  }
}

}  // namespace prismwright
