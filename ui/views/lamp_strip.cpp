#include "ui/views/lamp_strip.h"

#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>
#include <algorithm>
#include <cmath>

#include "ui/models/slow_pace.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr double kTop = 26, kFoot = 24;  // as much as the drawing's own strip and scale take
constexpr double kScale = 24;            // figures at the left of the bar
constexpr double kFinger_px = 2;
constexpr double kStep_deg = 10;  // the bar begins and ends at whole steps

QString angle(double deg) { return QString::number(deg, 'f', 2).replace('-', QChar(0x2212)); }

}  // namespace

LampStripView::LampStripView(Workbench* bench, Laser* laser, QWidget* parent)
    : QWidget(parent), bench_(bench), laser_(laser) {
  setObjectName(QStringLiteral("section.lampStrip"));
  setAccessibleName(tr("Light of the focus by elevation"));
  setMouseTracking(true);
  setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Expanding);
  SlowPace::of(bench_)->add(this, [this] { follow(); });
  connect(laser_, &Laser::moved, this, &LampStripView::followLaser);
  follow();
}

void LampStripView::follow() {
  proof_ = bench_->proof();
  if (proof_) {
    // A little of the dark beyond the lens is shown too.
    least_deg_ = std::max(kStep_deg * std::floor((proof_->lowest_deg - 1) / kStep_deg), -90.0);
    most_deg_ = std::min(kStep_deg * std::ceil((proof_->highest_deg + 1) / kStep_deg), 90.0);
  }
  update();
}

/// The arrow alone is painted anew: the strips stand while the laser is dragged.
void LampStripView::followLaser() {
  const QRect place = arrowRect();
  if (place == arrow_) return;
  update(arrow_);
  update(place);
}

QRect LampStripView::arrowRect() const {
  if (!laser_->path()) return {};
  return QRectF(kScale - 9, yOf(laser_->elevation_deg()) - 7, 12, 14).toAlignedRect();
}

QRectF LampStripView::bar() const { return QRectF(rect()).adjusted(kScale, kTop, -2, -kFoot); }

double LampStripView::yOf(double elevation_deg) const {
  return bar().bottom() - bar().height() * (elevation_deg - least_deg_) / (most_deg_ - least_deg_);
}

double LampStripView::elevationAt(double y) const {
  return std::clamp(least_deg_ + (bar().bottom() - y) / bar().height() * (most_deg_ - least_deg_), least_deg_,
                    most_deg_);
}

void LampStripView::paintStrips(QPainter& painter) const {
  painter.setRenderHint(QPainter::Antialiasing, false);
  painter.fillRect(bar(), palette::paper());
  if (!proof_) return;
  // Level light first: what is lost must not be hidden under it, however narrow it is.
  for (const bool level : {true, false}) {
    for (const LampStrip& strip : proof_->lamp) {
      if ((strip.fate == Fate::level) != level) continue;
      const double top = yOf(strip.to_deg);
      const QRectF block(bar().left(), top, bar().width(), std::max(yOf(strip.from_deg) - top, 1.0));
      painter.fillRect(block, palette::fate(strip.fate));
      // Colour is never alone: all but the level light is hatched.
      if (!level) painter.fillRect(block, QBrush(palette::surface(), Qt::BDiagPattern));
    }
  }
}

void LampStripView::paintNames(QPainter& painter) const {
  if (!proof_) return;
  painter.setPen(palette::ink_on(palette::fate(Fate::level)));
  for (const ZoneProof& zone : proof_->zones) {
    const QRectF block(bar().left(), yOf(zone.to_deg), bar().width(), yOf(zone.from_deg) - yOf(zone.to_deg));
    if (block.height() < painter.fontMetrics().ascent() + 1) continue;
    painter.drawText(block, Qt::AlignCenter, QString::fromStdString(zone.mark));
  }
}

void LampStripView::paintScale(QPainter& painter) const {
  painter.setPen(palette::muted_ink());
  painter.drawText(QRectF(0, 0, width(), kTop), Qt::AlignCenter, tr("lamp's\nlight"));
  for (double deg = least_deg_; deg <= most_deg_; deg += 2 * kStep_deg) {
    const double y = yOf(deg);
    painter.drawLine(QPointF(kScale - 4, y), QPointF(kScale, y));
    painter.drawText(QRectF(0, y - 8, kScale - 5, 16), Qt::AlignRight | Qt::AlignVCenter,
                     QString::number(deg, 'f', 0).replace('-', QChar(0x2212)));
  }
  painter.drawText(QRectF(0, height() - kFoot, width(), kFoot), Qt::AlignCenter, tr("deg"));
}

void LampStripView::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), palette::surface());
  QFont font = painter.font();
  font.setPointSizeF(7.5);
  painter.setFont(font);
  paintScale(painter);
  paintStrips(painter);
  paintNames(painter);
  painter.setPen(palette::hairline());
  painter.drawRect(bar());
  arrow_ = arrowRect();
  if (!laser_->path()) return;
  const double y = yOf(laser_->elevation_deg());
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(palette::ink(), 1));
  painter.setBrush(palette::brass());
  const QPointF arrow[] = {{kScale + 1, y}, {kScale - 7, y - 5}, {kScale - 7, y + 5}};
  painter.drawPolygon(arrow, 3);
}

QString LampStripView::wordsAt(double y) const {
  if (!proof_) return {};
  const double low = elevationAt(y + kFinger_px), high = elevationAt(y - kFinger_px);
  const LampStrip* meant = nullptr;
  for (const LampStrip& strip : proof_->lamp) {
    if (strip.to_deg < low || strip.from_deg > high) continue;
    // A narrow loss under the pointer is what is asked for.
    if (!meant || (meant->fate == Fate::level && strip.fate != Fate::level)) meant = &strip;
  }
  if (!meant) return tr("%1 deg: beyond the lens.").arg(angle(elevationAt(y)));
  const QString run = tr("%1 to %2 deg").arg(angle(meant->from_deg), angle(meant->to_deg));
  const QString zone = QString::fromStdString(meant->zone);
  const QString fate = palette::fate_words(meant->fate);
  return zone.isEmpty() ? tr("%1: %2.").arg(run, fate) : tr("%1: %2, %3.").arg(run, zone, fate);
}

void LampStripView::mouseMoveEvent(QMouseEvent* event) {
  QToolTip::showText(event->globalPosition().toPoint(), wordsAt(event->position().y()), this);
}

void LampStripView::mousePressEvent(QMouseEvent* event) {
  if (event->button() == Qt::LeftButton) laser_->point(elevationAt(event->position().y()));
}

}  // namespace prismwright
