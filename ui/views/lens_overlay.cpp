#include "ui/views/lens_overlay.h"

#include <QPainter>
#include <QPainterPath>
#include <algorithm>

#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr int kGrid = 8;

QColor veil() {
  QColor ground = palette::surface();
  ground.setAlphaF(0.86F);
  return ground;
}

void draw_swatch(QPainter& painter, const QRectF& box, const LegendRow& row) {
  painter.setPen(QPen(palette::hairline(), 1));
  painter.setBrush(row.fill);
  painter.drawRoundedRect(box, 2, 2);
  if (row.hatched) {
    painter.setBrush(QBrush(palette::ink_on(row.fill), Qt::BDiagPattern));
    painter.drawRoundedRect(box, 2, 2);
  }
  if (row.sign.isEmpty()) return;
  QColor ground = row.fill;
  if (row.fill.alphaF() < 0.99F) ground = palette::between(palette::surface(), row.fill, row.fill.alphaF());
  painter.setPen(palette::ink_on(ground));
  painter.drawText(box, Qt::AlignCenter, row.sign);
}

}  // namespace

LensOverlay::LensOverlay(QWidget* parent) : QWidget(parent) {
  setAttribute(Qt::WA_TransparentForMouseEvents);
  setAttribute(Qt::WA_NoSystemBackground);
  setFocusPolicy(Qt::NoFocus);
}

void LensOverlay::setLabels(QVector<Label> labels) {
  if (labels == labels_) return;  // a repaint here repaints the picture below, which asks for labels again
  labels_ = std::move(labels);
  update();
}

void LensOverlay::setLegend(std::vector<LegendRow> rows) {
  legend_ = std::move(rows);
  update();
}

void LensOverlay::setReading(const QString& words) {
  if (words == reading_) return;
  reading_ = words;
  update();
}

void LensOverlay::setProgress(double share, const QString& words) {
  share_ = share;
  progress_ = words;
  update();
}

void LensOverlay::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  for (const Label& label : labels_) drawLabel(painter, label);
  drawLegend(painter);
  drawReading(painter);
  drawProgress(painter);
}

void LensOverlay::drawLabel(QPainter& painter, const Label& label) const {
  if (label.tone == Tone::mark || label.tone == Tone::gap) return drawPinned(painter, label);
  const QFontMetricsF metrics(painter.font());
  QRectF box(0, 0, metrics.horizontalAdvance(label.words) + 2, metrics.height());
  box.moveCenter(label.at);
  QColor colour = label.tone == Tone::arrow ? palette::sea() : palette::ink();
  if (label.tone == Tone::far_panel) colour = palette::muted_ink();
  painter.setPen(colour);
  painter.drawText(box, Qt::AlignCenter, label.words);
}

void LensOverlay::drawPinned(QPainter& painter, const Label& label) const {
  const QFontMetricsF metrics(painter.font());
  QRectF box(0, 0, metrics.horizontalAdvance(label.words) + 2 * kGrid, metrics.height() + 4);
  // Marks above their place, gaps below theirs: a gap lies on the prism whose mark is shown.
  if (label.tone == Tone::mark) {
    box.moveBottomLeft(label.at + QPointF(3 * kGrid, -2 * kGrid));
  } else {
    box.moveTopLeft(label.at + QPointF(3 * kGrid, 2 * kGrid));
  }
  // Kept whole inside the picture, on whichever side of its place there is room.
  if (box.right() > width() - 4) box.moveRight(label.at.x() - 3 * kGrid);
  box.moveTop(std::clamp(box.top(), 4.0, std::max(4.0, height() - box.height() - 4.0)));
  const QColor edge = label.tone == Tone::mark ? palette::brass() : palette::sea();
  painter.setPen(QPen(edge, 1.5));
  painter.drawLine(label.at, QPointF(box.left() > label.at.x() ? box.left() : box.right(), box.center().y()));
  painter.setBrush(palette::surface());
  painter.drawRoundedRect(box, 3, 3);
  painter.setPen(palette::ink());
  painter.drawText(box, Qt::AlignCenter, label.words);
}

void LensOverlay::drawLegend(QPainter& painter) const {
  if (legend_.empty()) return;
  const QFontMetricsF metrics(painter.font());
  const double line = metrics.height() + 4;
  double widest = 0;
  for (const LegendRow& row : legend_) widest = std::max(widest, metrics.horizontalAdvance(row.words));
  constexpr double kSwatch = 28;
  QRectF box(0, 0, kSwatch + widest + 4 * kGrid, line * static_cast<double>(legend_.size()) + kGrid);
  box.moveBottomLeft(QPointF(kGrid, height() - kGrid));
  painter.setPen(QPen(palette::hairline(), 1));
  painter.setBrush(veil());
  painter.drawRoundedRect(box, 3, 3);
  double top = box.top() + kGrid / 2.0;
  for (const LegendRow& row : legend_) {
    draw_swatch(painter, QRectF(box.left() + kGrid, top + 2, kSwatch, line - 4), row);
    painter.setPen(palette::ink());
    painter.drawText(QRectF(box.left() + kSwatch + 2 * kGrid, top, widest + 2, line),
                     Qt::AlignVCenter | Qt::AlignLeft, row.words);
    top += line;
  }
}

void LensOverlay::drawReading(QPainter& painter) const {
  if (reading_.isEmpty()) return;
  const QFontMetricsF metrics(painter.font());
  QRectF box(0, kGrid, metrics.horizontalAdvance(reading_) + 2 * kGrid, metrics.height() + kGrid);
  box.moveRight(width() - kGrid);
  painter.setPen(QPen(palette::hairline(), 1));
  painter.setBrush(veil());
  painter.drawRoundedRect(box, 3, 3);
  painter.setPen(palette::ink());
  painter.drawText(box, Qt::AlignCenter, reading_);
}

void LensOverlay::drawProgress(QPainter& painter) const {
  if (progress_.isEmpty()) return;
  const QFontMetricsF metrics(painter.font());
  const double wanted = std::max(240.0, metrics.horizontalAdvance(progress_) + 3 * kGrid);
  QRectF box(kGrid, kGrid, std::min(wanted, width() - 2.0 * kGrid), metrics.height() + 2 * kGrid);
  painter.setPen(QPen(palette::hairline(), 1));
  painter.setBrush(veil());
  painter.drawRoundedRect(box, 3, 3);
  painter.setPen(palette::ink());
  const QRectF words = box.adjusted(kGrid, 2, -kGrid, -6);
  painter.drawText(words, Qt::AlignLeft | Qt::AlignVCenter,
                   metrics.elidedText(progress_, Qt::ElideRight, words.width()));
  if (share_ < 0) return;
  QRectF bar(box.left() + kGrid, box.bottom() - 6, box.width() - 2 * kGrid, 3);
  painter.fillRect(bar, palette::hairline());
  bar.setWidth(bar.width() * std::clamp(share_, 0.0, 1.0));
  painter.fillRect(bar, palette::brass());
}

}  // namespace prismwright
