#include "ui/views/zoom_canvas.h"

#include <QApplication>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

namespace prismwright {
namespace {

constexpr double kMost = 200;
constexpr double kStep = 1.25;

}  // namespace

ZoomCanvas::ZoomCanvas(QWidget* parent) : QWidget(parent) {
  setFocusPolicy(Qt::StrongFocus);
  setCursor(Qt::OpenHandCursor);
}

double ZoomCanvas::fitting() const {
  const QRectF all = box();
  if (all.isEmpty()) return 1;
  return std::max(1e-6,
                  std::min((width() - 2 * margin()) / all.width(), (height() - 2 * margin()) / all.height()));
}

double ZoomCanvas::pixelsPerMm() const { return fitting() * enlarged_; }

QTransform ZoomCanvas::toPixels() const {
  const double scale = pixelsPerMm();
  QTransform to;
  to.translate(width() / 2.0, height() / 2.0);
  to.scale(scale, -scale);
  to.translate(-middle_.x(), -middle_.y());
  return to;
}

QPointF ZoomCanvas::placeAt(const QPointF& pixel) const { return toPixels().inverted().map(pixel); }

void ZoomCanvas::fitAll() {
  enlarged_ = 1;
  moved_ = false;
  middle_ = box().center();
  update();
}

void ZoomCanvas::boxChanged(bool keeps_view) {
  if (!keeps_view || !moved_) return fitAll();
  update();
}

void ZoomCanvas::zoom(double factor) { zoomAt(rect().center(), factor); }

void ZoomCanvas::zoomAt(const QPointF& place, double factor) {
  const QPointF held = placeAt(place);
  enlarged_ = std::clamp(enlarged_ * factor, 1.0, kMost);
  if (enlarged_ == 1) return fitAll();
  moved_ = true;
  middle_ += held - placeAt(place);
  update();
}

void ZoomCanvas::resizeEvent(QResizeEvent*) {
  if (!moved_) fitAll();
}

void ZoomCanvas::wheelEvent(QWheelEvent* event) {
  zoomAt(event->position(), std::pow(kStep, event->angleDelta().y() / 120.0));
  event->accept();
}

void ZoomCanvas::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton) return;
  pressed_ = last_ = event->position();
  panning_ = false;
}

void ZoomCanvas::mouseMoveEvent(QMouseEvent* event) {
  if (!(event->buttons() & Qt::LeftButton)) return;
  if (!panning_ && (event->position() - pressed_).manhattanLength() < QApplication::startDragDistance()) return;
  panning_ = true;
  setCursor(Qt::ClosedHandCursor);
  middle_ += placeAt(last_) - placeAt(event->position());
  last_ = event->position();
  moved_ = true;
  update();
}

void ZoomCanvas::mouseReleaseEvent(QMouseEvent* event) {
  setCursor(Qt::OpenHandCursor);
  if (event->button() == Qt::LeftButton && !panning_) emit clicked(placeAt(event->position()));
  panning_ = false;
}

void ZoomCanvas::mouseDoubleClickEvent(QMouseEvent*) { fitAll(); }

void ZoomCanvas::keyPressEvent(QKeyEvent* event) {
  const double step = 0.1 * std::min(width(), height()) / pixelsPerMm();
  QPointF by;
  switch (event->key()) {
    case Qt::Key_Left:
      by = {-step, 0};
      break;
    case Qt::Key_Right:
      by = {step, 0};
      break;
    case Qt::Key_Up:
      by = {0, step};
      break;
    case Qt::Key_Down:
      by = {0, -step};
      break;
    case Qt::Key_Plus:
    case Qt::Key_Equal:
      return zoom(kStep);
    case Qt::Key_Minus:
      return zoom(1 / kStep);
    case Qt::Key_Home:
      return fitAll();
    default:
      return QWidget::keyPressEvent(event);
  }
  middle_ += by;
  moved_ = true;
  update();
}

}  // namespace prismwright
