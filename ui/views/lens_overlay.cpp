#include "ui/views/lens_overlay.h"

#include <QPainter>
#include <algorithm>
#include <utility>

#include "ui/style/palette.h"
#include "ui/views/lens_words.h"

namespace prismwright {
namespace {

constexpr int kGrid = 8;
constexpr double kSwatch = 28;

bool is_pinned(const LensOverlay::Label& label) {
  return label.tone == LensOverlay::Tone::mark || label.tone == LensOverlay::Tone::gap;
}

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
  for (const Label& label : labels_)
    if (!is_pinned(label)) drawNumber(painter, label);
  drawPinned(painter);
  drawLegend(painter);
  drawReading(painter);
  drawProgress(painter);
}

std::vector<QRectF> LensOverlay::pinnedBoxes() const {
  const QFontMetricsF metrics(font());
  std::vector<QRectF> taken = {legendBox(), readingBox(), progressBox()};
  std::vector<PinnedWords> words;
  for (const Label& label : labels_) {
    if (!is_pinned(label)) {
      taken.push_back(numberBox(label));
      continue;
    }
    const QSizeF size(metrics.horizontalAdvance(label.words) + 2 * kGrid, metrics.height() + 4);
    // Marks above their place, gaps below theirs: a gap lies on the prism whose mark is shown.
    words.push_back({label.at, size, label.tone == Tone::gap});
  }
  return lay_out_words(words, QRectF(rect()).adjusted(4, 4, -4, -4), std::move(taken));
}

QRectF LensOverlay::numberBox(const Label& label) const {
  const QFontMetricsF metrics(font());
  QRectF box(0, 0, metrics.horizontalAdvance(label.words) + 2, metrics.height());
  box.moveCenter(label.at);
  return box;
}

void LensOverlay::drawNumber(QPainter& painter, const Label& label) const {
  const QRectF box = numberBox(label);
  QColor colour = label.tone == Tone::arrow ? palette::sea() : palette::ink();
  if (label.tone == Tone::far_panel) colour = palette::muted_ink();
  // Numbers of the far side may come to lie on a line of the rose or the lens.
  painter.setPen(Qt::NoPen);
  painter.setBrush(veil());
  painter.drawRoundedRect(box.adjusted(-1, 1, 1, -1), 3, 3);
  painter.setPen(colour);
  painter.drawText(box, Qt::AlignCenter, label.words);
}

void LensOverlay::drawPinned(QPainter& painter) const {
  const std::vector<QRectF> boxes = pinnedBoxes();
  std::vector<const Label*> pinned;
  for (const Label& label : labels_)
    if (is_pinned(label)) pinned.push_back(&label);
  const auto edge = [](const Label& label) {
    return QPen(label.tone == Tone::mark ? palette::brass() : palette::sea(), 1.5);
  };
  // All lines first, so that none runs over the words of another.
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    const QPointF at = pinned[i]->at;
    painter.setPen(edge(*pinned[i]));
    painter.drawLine(at, QPointF(std::clamp(at.x(), boxes[i].left(), boxes[i].right()), boxes[i].center().y()));
  }
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    painter.setPen(edge(*pinned[i]));
    painter.setBrush(palette::surface());
    painter.drawRoundedRect(boxes[i], 3, 3);
    painter.setPen(palette::ink());
    painter.drawText(boxes[i], Qt::AlignCenter, pinned[i]->words);
  }
}

QRectF LensOverlay::legendBox() const {
  if (legend_.empty()) return {};
  const QFontMetricsF metrics(font());
  double widest = 0;
  for (const LegendRow& row : legend_) widest = std::max(widest, metrics.horizontalAdvance(row.words));
  const double lines = static_cast<double>(legend_.size());
  QRectF box(0, 0, kSwatch + widest + 4 * kGrid, (metrics.height() + 4) * lines + kGrid);
  box.moveBottomLeft(QPointF(kGrid, height() - kGrid));
  return box;
}

QRectF LensOverlay::readingBox() const {
  if (reading_.isEmpty()) return {};
  const QFontMetricsF metrics(font());
  QRectF box(0, kGrid, metrics.horizontalAdvance(reading_) + 2 * kGrid, metrics.height() + kGrid);
  box.moveRight(width() - kGrid);
  return box;
}

QRectF LensOverlay::progressBox() const {
  if (progress_.isEmpty()) return {};
  const QFontMetricsF metrics(font());
  const double wanted = std::max(240.0, metrics.horizontalAdvance(progress_) + 3 * kGrid);
  return {kGrid, kGrid, std::min(wanted, width() - 2.0 * kGrid), metrics.height() + 2 * kGrid};
}

void LensOverlay::drawLegend(QPainter& painter) const {
  if (legend_.empty()) return;
  const QRectF box = legendBox();
  const double line = QFontMetricsF(font()).height() + 4;
  const double widest = box.width() - kSwatch - 4 * kGrid;
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
  const QRectF box = readingBox();
  painter.setPen(QPen(palette::hairline(), 1));
  painter.setBrush(veil());
  painter.drawRoundedRect(box, 3, 3);
  painter.setPen(palette::ink());
  painter.drawText(box, Qt::AlignCenter, reading_);
}

void LensOverlay::drawProgress(QPainter& painter) const {
  if (progress_.isEmpty()) return;
  const QFontMetricsF metrics(font());
  const QRectF box = progressBox();
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
