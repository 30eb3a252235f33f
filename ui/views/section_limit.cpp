#include "ui/views/section_limit.h"

#include <QCoreApplication>
#include <algorithm>

#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr double kGrip_px = 6;
constexpr double kWordsWide_px = 300;

void paint_words(QPainter& painter, const QString& words, QPointF place, const QRectF& view, bool amiss) {
  const QRectF most(0, 0, kWordsWide_px, 120);
  QRectF box = painter.fontMetrics().boundingRect(most.toRect(), Qt::TextWordWrap, words);
  box = box.adjusted(-6, -4, 6, 4);
  box.moveTopLeft(place + QPointF(14, 12));
  // Kept in sight, and off the grip itself.
  if (box.right() > view.right()) box.moveRight(place.x() - 14);
  if (box.bottom() > view.bottom()) box.moveBottom(place.y() - 12);
  painter.setPen(QPen(amiss ? palette::amiss() : palette::sea(), 1));
  painter.setBrush(palette::surface());
  painter.drawRoundedRect(box, 3, 3);
  painter.setPen(amiss ? palette::amiss() : palette::ink());
  painter.drawText(box.adjusted(6, 4, -6, -4), Qt::TextWordWrap, words);
}

}  // namespace

void paint_limit(QPainter& painter, const LimitGrip& grip, const LimitDrag& drag, const SectionMap& map,
                 const QRectF& view) {
  const QPointF place = map.toView(grip.place);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(palette::sea(), 1.2, Qt::DashLine));
  painter.drawLine(map.toView(grip.focus), place);
  const QPointF corners[] = {place + QPointF(0, -kGrip_px), place + QPointF(kGrip_px, 0),
                             place + QPointF(0, kGrip_px), place + QPointF(-kGrip_px, 0)};
  painter.setPen(QPen(palette::surface(), 1.5));
  painter.setBrush(palette::sea());
  painter.drawPolygon(corners, 4);
  if (!drag.isHeld()) return;
  const QString limit =
      QCoreApplication::translate("SectionDrawing", "%1 to %2 deg")
          .arg(drag.zone(), QString::number(grip.limit_deg, 'f', 2).replace('-', QChar(0x2212)));
  const bool amiss = !drag.refusal().isEmpty();
  paint_words(painter, amiss ? limit + QLatin1Char('\n') + drag.refusal() : limit, place, view, amiss);
}

}  // namespace prismwright
