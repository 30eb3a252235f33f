#pragma once

#include <qcustomplot.h>

#include <QLineF>
#include <vector>

#include "core/light/beam_map.h"

namespace prismwright {

/// Pieces of the line along which a map has one intensity, in its own degrees: straight between the crossings
/// of the sides of its cells.
std::vector<QLineF> contour_of(const BeamMap& beam, double cd);

/// Such pieces on a plot, in the coordinates of its axes.
class ContourItem : public QCPAbstractItem {
 public:
  ContourItem(QCustomPlot* plot, QCPAxis* across, QCPAxis* up, const QPen& pen);
  void setPieces(std::vector<QLineF> pieces) { pieces_ = std::move(pieces); }
  double selectTest(const QPointF&, bool, QVariant*) const override { return -1; }

 protected:
  void draw(QCPPainter* painter) override;

 private:
  QCPAxis* across_;
  QCPAxis* up_;
  QPen pen_;
  std::vector<QLineF> pieces_;
};

}  // namespace prismwright
