#include "ui/views/chromaticity_items.h"

#include <qcustomplot.h>

#include <cmath>

namespace prismwright {

void ChromaticityItems::line(const std::vector<Chromaticity>& points, const QPen& pen, bool closed,
                             const QBrush& ground) const {
  auto* curve = new QCPCurve(field_->axis(QCPAxis::atBottom), field_->axis(QCPAxis::atLeft));
  for (const Chromaticity& point : points) curve->addData(point.x, point.y);
  if (closed && !points.empty()) curve->addData(points.front().x, points.front().y);
  curve->setPen(pen);
  curve->setBrush(ground);
}

void ChromaticityItems::words(const Chromaticity& at, const QString& text, Qt::Alignment side,
                              const QColor& colour, double smaller_pt, int away_px) const {
  auto* item = new QCPItemText(plot_);
  item->setClipAxisRect(field_);
  item->setClipToAxisRect(true);
  item->position->setAxes(field_->axis(QCPAxis::atBottom), field_->axis(QCPAxis::atLeft));
  item->position->setCoords(at.x, at.y);
  item->setPositionAlignment(side);
  item->setTextAlignment(side & Qt::AlignRight ? Qt::AlignRight : Qt::AlignLeft);
  item->setPadding(QMargins(away_px, away_px / 2, away_px, away_px / 2));
  QFont font = plot_->font();
  font.setPointSizeF(font.pointSizeF() - smaller_pt);
  item->setFont(font);
  item->setText(text);
  item->setColor(colour);
  item->setSelectable(false);
}

void ChromaticityItems::wordsBeyond(const Chromaticity& at, const Chromaticity& from, const QString& text,
                                    const QColor& colour) const {
  const double across = at.x - from.x;
  const double up = at.y - from.y;
  const bool level = std::abs(across) > 0.4 * std::abs(up);
  const bool upright = std::abs(up) > 0.4 * std::abs(across);
  Qt::Alignment side = level ? (across > 0 ? Qt::AlignLeft : Qt::AlignRight) : Qt::AlignHCenter;
  side |= upright ? (up > 0 ? Qt::AlignBottom : Qt::AlignTop) : Qt::AlignVCenter;
  words(at, text, side, colour, 1);
}

void ChromaticityItems::key(const QString& text, const QColor& colour) const {
  auto* item = new QCPItemText(plot_);
  item->setClipAxisRect(field_);
  item->position->setAxisRect(field_);
  item->position->setType(QCPItemPosition::ptAxisRectRatio);
  item->position->setCoords(1, 0);
  item->setPositionAlignment(Qt::AlignRight | Qt::AlignTop);
  item->setTextAlignment(Qt::AlignLeft);
  item->setPadding(QMargins(4, 4, 8, 4));
  QFont font = plot_->font();
  font.setPointSizeF(font.pointSizeF() - 1);
  item->setFont(font);
  item->setText(text);
  item->setColor(colour);
  item->setSelectable(false);
}

void ChromaticityItems::mark(const Chromaticity& at, Shape shape, const QPen& pen, const QBrush& ground,
                             double size_px) const {
  auto* curve = new QCPCurve(field_->axis(QCPAxis::atBottom), field_->axis(QCPAxis::atLeft));
  curve->addData(at.x, at.y);
  curve->setLineStyle(QCPCurve::lsNone);
  const auto of = shape == Shape::disc      ? QCPScatterStyle::ssCircle
                  : shape == Shape::diamond ? QCPScatterStyle::ssDiamond
                                            : QCPScatterStyle::ssPlus;
  curve->setScatterStyle(QCPScatterStyle(of, pen, ground, size_px));
}

}  // namespace prismwright
