#include "ui/models/chart_outlines.h"

#include <cmath>

#include "core/base/angle.h"
#include "core/drawing/unrolled_lens.h"

namespace prismwright {
namespace {

QPointF on_screen(PlatePoint place) { return {place.u, -place.v}; }

/// Qt counts the angles of an arc anticlockwise as seen on the screen, so they stay as they are.
void add_loop(QPainterPath& path, const PlateChain& loop) {
  if (loop.empty()) return;
  path.moveTo(on_screen(loop.front().from));
  for (const PlateStep& step : loop) {
    if (step.straight()) {
      path.lineTo(on_screen(step.to));
      continue;
    }
    const QPointF radius(step.radius_mm, step.radius_mm);
    const QRectF round(on_screen(step.centre) - radius, on_screen(step.centre) + radius);
    const double start = std::atan2(step.from.v - step.centre.v, step.from.u - step.centre.u);
    path.arcTo(round, degrees(start), degrees(step.turn));
  }
  path.closeSubpath();
}

ChartPiece piece_of(const UnrolledPrism& prism) {
  ChartPiece piece{QString::fromStdString(prism.mark), QPainterPath(), on_screen(prism.middle)};
  for (const PlateChain& loop : prism.loops) add_loop(piece.outline, loop);
  return piece;
}

}  // namespace

std::vector<ChartPanel> chart_panels(const LensPlan& plan) {
  std::vector<ChartPanel> panels;
  for (const UnrolledPanel& unrolled_panel : unrolled(plan)) {
    ChartPanel panel;
    panel.number = unrolled_panel.number;
    panel.blind = unrolled_panel.blind;
    panel.frame = QRectF(QPointF(unrolled_panel.low.u, -unrolled_panel.high.v),
                         QPointF(unrolled_panel.high.u, -unrolled_panel.low.v));
    for (const UnrolledPrism& prism : unrolled_panel.prisms) panel.pieces.push_back(piece_of(prism));
    panels.push_back(std::move(panel));
  }
  return panels;
}

}  // namespace prismwright
