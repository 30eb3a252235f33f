#include "ui/views/lens_gl.h"

#include <QElapsedTimer>
#include <QGuiApplication>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QOpenGLContext>
#include <QOpenGLFunctions>
#include <QWheelEvent>
#include <cmath>

#include <AIS_InteractiveContext.hxx>

#include "ui/views/lens_kernel.h"

namespace prismwright {

LensGl::LensGl(QWidget* parent) : QOpenGLWidget(parent) {
  setMinimumSize(160, 120);
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
  settle_.setSingleShot(true);
  settle_.setInterval(200);
  connect(&settle_, &QTimer::timeout, this, [this] {
    moving_ = false;
    update();
  });
  kernel_ = std::make_unique<Kernel>();
  trouble_ = kernel_->open();
}

LensGl::~LensGl() {
  makeCurrent();
  kernel_->close();
  doneCurrent();
}

QString LensGl::troubleBeforehand() {
  if (QGuiApplication::platformName() != QLatin1String("xcb"))
    return tr("The 3D view needs an X display; this window runs on \"%1\". Start it on X11 or XWayland.")
        .arg(QGuiApplication::platformName());
  QOpenGLContext probe;
  if (!probe.create())
    return tr("The 3D view needs OpenGL, and this display offers none. Check the graphics driver.");
  return {};
}

LensGl::Guard::Guard(LensGl& gl) : gl_(gl) {
  if (gl_.started_) gl_.makeCurrent();
}
LensGl::Guard::~Guard() {
  if (gl_.started_) gl_.doneCurrent();
  if (gl_.slow_) gl_.hurry();
  gl_.update();
}

const Handle(AIS_InteractiveContext) & LensGl::scene() const { return kernel_->context; }

void LensGl::fail(const QString& sentence) {
  trouble_ = sentence;
  emit failed(trouble_);
}

void LensGl::initializeGL() {
  if (!trouble_.isEmpty()) return fail(trouble_);
  const QSurfaceFormat format = context()->format();
  const bool core_profile =
      format.profile() == QSurfaceFormat::CoreProfile && format.version() >= qMakePair(3, 2);
  const QSize size = QSizeF(QSizeF(width(), height()) * devicePixelRatioF()).toSize().expandedTo({1, 1});
  const QString sentence = kernel_->start(core_profile, window()->winId(), size);
  if (!sentence.isEmpty()) return fail(sentence);
  started_ = true;
  emit ready();
}

void LensGl::paintGL() {
  if (!started_) return;
  camera_.apply(kernel_->camera());
  QElapsedTimer clock;
  clock.start();
  const QString sentence = kernel_->draw(moving_, sharpness_);
  if (sentence.isEmpty()) context()->functions()->glFinish();
  measure(clock.elapsed());
  if (!sentence.isEmpty()) {
    started_ = false;
    return fail(sentence);
  }
  ++pictures_;
  emit drawn();
}

void LensGl::measure(qint64 drawing_ms) {
  constexpr qint64 kTooLongWaiting_ms = 120;
  constexpr qint64 kTooLongMoving_ms = 130;
  constexpr qint64 kTimeToSpare_ms = 30;
  if (!moving_) {
    slow_ = drawing_ms > kTooLongWaiting_ms;
  } else if (drawing_ms > kTooLongMoving_ms) {
    sharpness_ = 0.66;
  } else if (drawing_ms < kTimeToSpare_ms) {
    sharpness_ = 1;
  }
}

void LensGl::hurry() {
  moving_ = true;
  settle_.start();
}

void LensGl::cameraMoved(bool by_hand) {
  if (by_hand || slow_) hurry();
  update();
}

QPointF LensGl::project(const gp_Pnt& place, bool* in_front) const {
  if (!trouble_.isEmpty()) return {};
  const Handle(Graphic3d_Camera) camera = new Graphic3d_Camera(kernel_->camera());
  camera_.apply(camera);
  camera->SetAspect(std::max(width(), 1) / static_cast<double>(std::max(height(), 1)));
  const gp_Vec ahead(camera->Eye(), place);
  if (in_front) *in_front = ahead.Dot(gp_Vec(camera->Direction())) > 1e-6;
  const gp_Pnt at = camera->Project(place);
  return {(at.X() + 1) / 2 * width(), (1 - at.Y()) / 2 * height()};
}

Handle(Standard_Transient) LensGl::pick(const QPointF& place) {
  if (!started_) return nullptr;
  makeCurrent();
  camera_.apply(kernel_->camera());
  const Handle(Standard_Transient) found = kernel_->pick(place * devicePixelRatioF());
  doneCurrent();
  return found;
}

void LensGl::mousePressEvent(QMouseEvent* event) {
  press_ = last_ = event->position();
  dragged_ = false;
}

void LensGl::mouseMoveEvent(QMouseEvent* event) {
  const QPointF at = event->position();
  const Qt::MouseButtons held = event->buttons();
  if (held == Qt::NoButton) return emit hovered(at);
  constexpr double kStillAClick_px = 4;
  if (!dragged_ && QLineF(press_, at).length() < kStillAClick_px) return;
  dragged_ = true;
  const QPointF step = at - last_;
  last_ = at;
  const bool slides = (held & (Qt::MiddleButton | Qt::RightButton)) || (event->modifiers() & Qt::ShiftModifier);
  slides ? camera_.pan(step.x(), step.y(), height()) : camera_.turn(step.x(), step.y(), height());
  cameraMoved(true);
}

void LensGl::mouseReleaseEvent(QMouseEvent* event) {
  if (event->button() == Qt::LeftButton && !dragged_)
    emit clicked(event->position(), event->modifiers() & Qt::ControlModifier);
}

void LensGl::wheelEvent(QWheelEvent* event) {
  const QPointF from_middle = event->position() - QPointF(width() / 2.0, height() / 2.0);
  camera_.zoom(std::pow(1.0015, event->angleDelta().y()), from_middle.x(), from_middle.y(), height());
  cameraMoved(true);
  event->accept();
}

void LensGl::keyPressEvent(QKeyEvent* event) {
  constexpr double kStep_px = 15;
  const bool slides = event->modifiers() & Qt::ShiftModifier;
  const auto go = [&](double dx, double dy) {
    slides ? camera_.pan(dx, dy, height()) : camera_.turn(dx, dy, height());
    cameraMoved(true);
  };
  switch (event->key()) {
    case Qt::Key_Left:
      return go(kStep_px, 0);
    case Qt::Key_Right:
      return go(-kStep_px, 0);
    case Qt::Key_Up:
      return go(0, kStep_px);
    case Qt::Key_Down:
      return go(0, -kStep_px);
    case Qt::Key_Plus:
    case Qt::Key_Equal:
      camera_.zoom(1.2, 0, 0, height());
      return cameraMoved(true);
    case Qt::Key_Minus:
      camera_.zoom(1 / 1.2, 0, 0, height());
      return cameraMoved(true);
    default:
      QOpenGLWidget::keyPressEvent(event);
  }
}

}  // namespace prismwright
