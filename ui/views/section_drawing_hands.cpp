#include <QContextMenuEvent>
#include <QHelpEvent>
#include <QMouseEvent>
#include <QToolTip>
#include <cmath>

#include "core/base/angle.h"
#include "ui/models/zone_selection.h"
#include "ui/views/section_drawing.h"
#include "ui/views/section_strips.h"

namespace prismwright {
namespace {

constexpr double kGripReach_px = 12;
constexpr double kLimitReach_px = 9;
constexpr double kStillClick_px = 4;
constexpr double kZoomStep = 1.2;

}  // namespace

bool SectionDrawing::overGrip(const QPointF& place) const {
  const auto at = grip();
  return at && QLineF(*at, place).length() <= kGripReach_px;
}

bool SectionDrawing::overLimit(const QPointF& place) const {
  const auto grip = limitGrip();
  return grip && QLineF(map_.toView(grip->place), place).length() <= kLimitReach_px;
}

bool SectionDrawing::overStrip(const QPointF& place) const {
  return place.x() > room().right() && place.y() < room().bottom();
}

void SectionDrawing::wheelEvent(QWheelEvent* event) {
  zoomAt(event->position(), std::pow(kZoomStep, event->angleDelta().y() / 120.0));
  event->accept();
}

void SectionDrawing::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton) return;
  press_ = last_ = event->position();
  hand_ = overLimit(press_) ? Hand::limits : overGrip(press_) ? Hand::turns : Hand::pressed;
  if (hand_ == Hand::limits) limits_->take(leading_zone(*bench_));
}

void SectionDrawing::mouseMoveEvent(QMouseEvent* event) {
  const QPointF place = event->position();
  if (hand_ == Hand::free)
    setCursor(overLimit(place) || overGrip(place) ? Qt::OpenHandCursor : Qt::ArrowCursor);
  if (hand_ == Hand::free && overStrip(place))
    QToolTip::showText(event->globalPosition().toPoint(), tipAt(place), this);
  if (hand_ == Hand::pressed && QLineF(press_, place).length() > kStillClick_px) hand_ = Hand::pans;
  if (hand_ == Hand::turns) turnTowards(place);
  if (hand_ == Hand::limits) limits_->moveTo(map_.toSection(place));
  if (hand_ == Hand::pans) {
    setCursor(Qt::ClosedHandCursor);
    map_.pan(place - last_);
    fitted_ = false;
    update();
    last_ = place;
  }
}

void SectionDrawing::mouseReleaseEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton) return;
  if (hand_ == Hand::pressed) select(zoneAt(press_), event->modifiers() & Qt::ControlModifier);
  if (hand_ == Hand::limits) limits_->letGo();
  hand_ = Hand::free;
  setCursor(Qt::ArrowCursor);
}

void SectionDrawing::mouseDoubleClickEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton || overGrip(event->position()) || overLimit(event->position())) return;
  fitAll();
}

void SectionDrawing::contextMenuEvent(QContextMenuEvent* event) {
  const bool by_key = event->reason() == QContextMenuEvent::Keyboard;
  const QString zone = by_key ? leading_zone(*bench_) : zoneAt(QPointF(event->pos()));
  if (!zone.isEmpty()) select_zones(*bench_, {zone}, zone);
  emit zoneMenuWanted(event->globalPos());
}

void SectionDrawing::turnTowards(const QPointF& place) {
  const SectionPoint at = map_.toSection(place);
  const double rise = at.z - laser_->source_z_mm();
  if (at.r != 0 || rise != 0) laser_->point(degrees(std::atan2(rise, std::max(at.r, 0.0))));
}

void SectionDrawing::select(const QString& zone, bool adds) {
  QSet<QString> zones = adds ? selected_zones(*bench_) : QSet<QString>();
  if (!zone.isEmpty() && zones.contains(zone))
    zones.remove(zone);
  else if (!zone.isEmpty())
    zones.insert(zone);
  else if (adds)
    return;
  select_zones(*bench_, zones, zone);
}

void SectionDrawing::keyPressEvent(QKeyEvent* event) {
  const double turn = event->modifiers() & Qt::ShiftModifier ? 1.0 : 0.1;
  switch (event->key()) {
    case Qt::Key_Up:
    case Qt::Key_Right:
      return laser_->turn(turn);
    case Qt::Key_Down:
    case Qt::Key_Left:
      return laser_->turn(-turn);
    case Qt::Key_PageUp:
      return laser_->stepZone(1);
    case Qt::Key_PageDown:
      return laser_->stepZone(-1);
    case Qt::Key_Home:
      return fitAll();
    case Qt::Key_Plus:
    case Qt::Key_Equal:
      return zoom(kZoomStep);
    case Qt::Key_Minus:
      return zoom(1 / kZoomStep);
    case Qt::Key_Escape:
      if (hand_ != Hand::limits) return QWidget::keyPressEvent(event);
      hand_ = Hand::free;
      return limits_->putBack();
    case Qt::Key_Space:
      return select(laser_->zone(), event->modifiers() & Qt::ControlModifier);
    default:
      QWidget::keyPressEvent(event);
  }
}

QString SectionDrawing::tipAt(const QPointF& place) const {
  if (overLimit(place)) return tr("Drag to move the limit of %1").arg(leading_zone(*bench_));
  if (overGrip(place)) return tr("Drag to turn the laser");
  if (overStrip(place)) return strip_words(picture_.beam(), map_, place.y(), bench_->inches());
  return zoneAt(place);
}

bool SectionDrawing::event(QEvent* event) {
  if (event->type() != QEvent::ToolTip) return QWidget::event(event);
  const auto* help = static_cast<QHelpEvent*>(event);
  QToolTip::showText(help->globalPos(), tipAt(QPointF(help->pos())), this);
  return true;
}

}  // namespace prismwright
