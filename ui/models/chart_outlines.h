#pragma once

#include <QPainterPath>
#include <QPointF>
#include <QRectF>
#include <QString>
#include <vector>

#include "core/lens/plan.h"

namespace prismwright {

/// One prism on the unrolled lens: mm, x to the right as seen from outside, y downwards (screen sense).
struct ChartPiece {
  QString mark;
  QPainterPath outline;
  QPointF anchor;  ///< a place inside the outline, for its sign
};

/// One panel seen from outside, the focal plane at y = 0 and the panel's axis at x = 0.
struct ChartPanel {
  int number = 1;
  bool blind = false;
  QRectF frame;  ///< what the panel takes on the chart
  std::vector<ChartPiece> pieces;
};

/// The lens unrolled (core/drawing/unrolled_lens.h), laid out for the screen.
std::vector<ChartPanel> chart_panels(const LensPlan& plan);

}  // namespace prismwright
