#include "ui/views/sheet_painter.h"

#include <QFontMetricsF>
#include <QImage>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr double kLeastWidth_px = 0.6;
/// Words smaller than this cannot be read: a grey bar says that they are there.
constexpr double kLeastWords_px = 3.5;
constexpr double kFontSize_px = 32;  // set large and scaled, so that words keep their widths at every size

QPointF point(PaperPoint p) { return {p.x, p.y}; }

/// The arcs of Qt's painter run in a frame with y down: angles change their sign, and so does the sweep.
void add_step(QPainterPath& path, PaperPoint from, const PaperStep& step) {
  if (step.turn == 0) return path.lineTo(point(step.to));
  const double start = degrees(std::atan2(from.y - step.centre.y, from.x - step.centre.x));
  const QRectF round(step.centre.x - step.radius_mm, step.centre.y - step.radius_mm, 2 * step.radius_mm,
                     2 * step.radius_mm);
  path.arcTo(round, -start, -degrees(step.turn));
}

QPainterPath path_of(const Stroke& stroke) {
  QPainterPath path(point(stroke.start));
  PaperPoint from = stroke.start;
  for (const PaperStep& step : stroke.steps) {
    add_step(path, from, step);
    from = step.to;
  }
  if (stroke.closed) path.closeSubpath();
  return path;
}

/// A picture keeps its colours, whatever those of the window are.
void paint_picture(QPainter& painter, const DrawnPicture& picture, const QTransform& to_pixels) {
  if (!picture.image || picture.image->wide <= 0 || picture.image->high <= 0) return;
  const PointImage& image = *picture.image;
  const QImage points(image.rgb.data(), image.wide, image.high, 3 * image.wide, QImage::Format_RGB888);
  painter.setRenderHint(QPainter::SmoothPixmapTransform);
  painter.drawImage(to_pixels.mapRect(QRectF(point(picture.low), point(picture.high))), points);
}

/// On a dark sheet a tone is deepened, so that pale words on it are read.
QColor shown_tone(const PaperColour& tone) {
  constexpr double kShareOnDark = 0.4;
  const QColor printed(tone.red, tone.green, tone.blue);
  return palette::theme() == palette::Theme::light
             ? printed
             : palette::between(palette::surface(), printed, kShareOnDark);
}

QBrush filling(const Stroke& stroke) {
  if (stroke.tone) return shown_tone(*stroke.tone);
  return stroke.filled ? QBrush(palette::ink()) : QBrush(Qt::NoBrush);
}

void paint_stroke(QPainter& painter, const Stroke& stroke, const QTransform& to_pixels, double scale) {
  const double width = std::max(kLeastWidth_px, width_mm(stroke.line) * scale);
  QPen pen(stroke.line == LineClass::hatch ? palette::muted_ink() : palette::ink(), width);
  pen.setJoinStyle(Qt::RoundJoin);
  QList<qreal> dashes;
  for (const double length : dashes_mm(stroke.line)) dashes << std::max(1.0, length * scale) / width;
  if (dashes.size() > 1) pen.setDashPattern(dashes);
  painter.setPen(pen);
  painter.setBrush(filling(stroke));
  painter.drawPath(to_pixels.map(path_of(stroke)));
}

void paint_text(QPainter& painter, const DrawnText& text, const QTransform& to_pixels, double scale) {
  QFont font = painter.font();
  font.setPixelSize(static_cast<int>(kFontSize_px));
  font.setBold(text.bold);
  const QString words = QString::fromStdString(text.words);
  const double size = text.size_mm * scale / kFontSize_px;
  const double width = QFontMetricsF(font).horizontalAdvance(words);
  const double shift = text.anchor == Anchor::left ? 0 : text.anchor == Anchor::middle ? -0.5 * width : -width;
  painter.save();
  painter.translate(to_pixels.map(point(text.place)));
  if (text.turned) painter.rotate(-90);
  painter.scale(size, size);
  if (text.size_mm * scale < kLeastWords_px) {
    painter.fillRect(QRectF(shift, -0.5 * kFontSize_px, width, 0.35 * kFontSize_px), palette::hairline());
  } else {
    painter.setFont(font);
    painter.setPen(palette::ink());
    painter.drawText(QPointF(shift, 0), words);
  }
  painter.restore();
}

}  // namespace

void paint_sheet(QPainter& painter, const Sheet& sheet, const QTransform& to_pixels) {
  const double scale = std::abs(to_pixels.m11());
  const QRectF paper = to_pixels.mapRect(QRectF(0, 0, sheet.size.width_mm(), sheet.size.height_mm()));
  painter.setPen(QPen(palette::hairline(), 1));
  painter.setBrush(palette::surface());
  painter.drawRect(paper);
  painter.setRenderHint(QPainter::Antialiasing);
  for (const DrawnPicture& picture : sheet.pictures) paint_picture(painter, picture, to_pixels);
  for (const Stroke& stroke : sheet.strokes) paint_stroke(painter, stroke, to_pixels, scale);
  for (const DrawnText& text : sheet.texts) paint_text(painter, text, to_pixels, scale);
}

}  // namespace prismwright
