#include "core/drawing/line_view_drawing.h"

#include <cmath>

namespace prismwright {

namespace {

constexpr double kFinest_mm = 0.05;  ///< a shorter step cannot be seen on paper

constexpr double kCrowded = 0.15;  ///< scale under which the lines of a whole lens crowd

LineClass class_of(const ViewLine& line, bool crowded) {
  if (!line.glass || (!line.outline && crowded)) return LineClass::hatch;
  return line.outline && !crowded ? LineClass::outline : LineClass::thin;
}

Stroke stroke_of(const ViewLine& line, const ViewMap& map, bool crowded) {
  Stroke stroke;
  stroke.line = class_of(line, crowded);
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

void draw_line_view(SheetMaker& maker, const LineView& view, const ViewMap& map, ViewCrowd crowd) {
  const bool crowded = crowd == ViewCrowd::many && map.paper_per_mm < kCrowded;
  for (const ViewLine& line : view.lines) {
    if (line.points.size() < 2) continue;
    Stroke stroke = stroke_of(line, map, crowded);
    PaperPoint from = stroke.start;
    for (std::size_t i = 0; crowd == ViewCrowd::few && i < stroke.steps.size(); ++i) {
      maker.keep_clear(from, stroke.steps[i].to);
      from = stroke.steps[i].to;
    }
    maker.draw(std::move(stroke));
  }
}

}  // namespace prismwright
