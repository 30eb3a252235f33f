#include "ui/views/section_drawing.h"

#include <QHelpEvent>
#include <QLabel>
#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>
#include <cmath>

#include "core/base/angle.h"
#include "ui/models/zone_selection.h"
#include "ui/style/palette.h"
#include "ui/views/section_laser.h"
#include "ui/views/section_scales.h"
#include "ui/views/section_strips.h"

namespace prismwright {
namespace {

constexpr double kGripReach_px = 12;
constexpr double kStillClick_px = 4;
constexpr double kZoomStep = 1.2;

}  // namespace

SectionDrawing::SectionDrawing(Workbench* bench, Laser* laser, QWidget* parent)
    : QWidget(parent), bench_(bench), laser_(laser), problem_(new QLabel(this)) {
  setObjectName(QStringLiteral("section.drawing"));
  setAccessibleName(tr("Drawing of the section"));
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
  problem_->setObjectName(QStringLiteral("section.problem"));
  problem_->setWordWrap(true);
  problem_->setAutoFillBackground(true);
  problem_->setMargin(12);
  problem_->setFrameShape(QFrame::Box);
  problem_->hide();
  connect(bench_, &Workbench::bookChanged, this, [this] {
    follow();
    fitAll();
  });
  connect(bench_, &Workbench::valuesChanged, this, &SectionDrawing::follow);
  connect(bench_, &Workbench::selectionChanged, this, qOverload<>(&QWidget::update));
  connect(bench_, &Workbench::unitsChanged, this, qOverload<>(&QWidget::update));
  connect(laser_, &Laser::moved, this, qOverload<>(&QWidget::update));
  follow();
}

void SectionDrawing::follow() {
  picture_.follow(*bench_);
  showProblem();
  // A view that nobody has moved still shows the whole lens after an edit that made it larger.
  const SectionPoint low = map_.toSection(room().bottomLeft());
  const SectionPoint high = map_.toSection(room().topRight());
  const QRectF seen(low.r, low.z, high.r - low.r, high.z - low.z);
  if (fitted_ && !seen.contains(box_of(picture_.prisms()))) fitAll();
  update();
}

void SectionDrawing::showProblem() {
  const bool any = bench_->sectionProblem().has_value();
  problem_->setVisible(any);
  if (!any) return;
  problem_->setText(QString::fromStdString(bench_->sectionProblem()->text));
  QPalette colours = problem_->palette();
  colours.setColor(QPalette::Window, palette::surface());
  colours.setColor(QPalette::WindowText, palette::amiss());
  problem_->setPalette(colours);
  const QRect free = room().toRect().adjusted(16, 16, -16, -16);
  const int wide = std::min(free.width(), 520);
  problem_->setGeometry(free.center().x() - wide / 2, free.top(), wide, problem_->heightForWidth(wide));
}

QRectF SectionDrawing::room() const {
  return QRectF(rect()).adjusted(kScaleLeft, 0, -kStripWidth, -kScaleFoot);
}

QRectF SectionDrawing::box() const {
  const QRectF glass = box_of(picture_.prisms());
  // Behind the focus a little, seaward enough to see the beam leave.
  return glass.adjusted(-0.06 * glass.width(), -0.04 * glass.height(), 0.22 * glass.width(),
                        0.04 * glass.height());
}

double SectionDrawing::reach_mm() const {
  return bench_->plan() ? 0.42 * bench_->plan()->section.input.focal_mm : 100;
}

std::optional<QPointF> SectionDrawing::grip() const {
  return laser_->path() ? grip_place(*laser_->path(), reach_mm(), map_, room()) : std::nullopt;
}

void SectionDrawing::fitAll() {
  map_.fit(box(), room());
  fitted_ = true;
  update();
}

void SectionDrawing::zoom(double factor) { zoomAt(room().center(), factor); }

void SectionDrawing::zoomAt(const QPointF& place, double factor) {
  map_.zoomAt(place, factor);
  fitted_ = false;
  update();
}

void SectionDrawing::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  const QSet<QString> selected = selected_zones(*bench_);
  painter.drawPixmap(0, 0,
                     picture_.pixmap({map_, size(), devicePixelRatioF(), selected, bench_->inches(),
                                      bench_->sectionProblem().has_value()}));
  if (bench_->sectionProblem()) return;
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setClipRect(room());
  if (laser_->path()) {
    const bool below = laser_->elevation_deg() < 0;
    for (const DrawnPrism& prism : picture_.prisms()) {
      // A ring is drawn twice: the piece on the laser's side is the one it goes through.
      const bool mirrored_piece = prism.name_place.z < 0;
      const bool alone = std::abs(prism.name_place.z) < 1e-6;
      if (prism.zone == laser_->zone() && (alone || mirrored_piece == below)) paint_lit(painter, prism, map_);
    }
  }
  paint_laser(painter, *laser_, reach_mm(), map_, room(), hasFocus());
}

void SectionDrawing::resizeEvent(QResizeEvent*) {
  if (fitted_) fitAll();
  showProblem();
}

QString SectionDrawing::zoneAt(const QPointF& place) const {
  for (const DrawnPrism& prism : picture_.prisms())
    if (outline_of(prism, map_).contains(place)) return prism.zone;
  return {};
}

bool SectionDrawing::overGrip(const QPointF& place) const {
  const auto at = grip();
  return at && QLineF(*at, place).length() <= kGripReach_px;
}

void SectionDrawing::wheelEvent(QWheelEvent* event) {
  zoomAt(event->position(), std::pow(kZoomStep, event->angleDelta().y() / 120.0));
  event->accept();
}

void SectionDrawing::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton) return;
  press_ = last_ = event->position();
  hand_ = overGrip(press_) ? Hand::turns : Hand::pressed;
}

void SectionDrawing::mouseMoveEvent(QMouseEvent* event) {
  const QPointF place = event->position();
  if (hand_ == Hand::free) setCursor(overGrip(place) ? Qt::OpenHandCursor : Qt::ArrowCursor);
  if (hand_ == Hand::pressed && QLineF(press_, place).length() > kStillClick_px) hand_ = Hand::pans;
  if (hand_ == Hand::turns) turnTowards(place);
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
  hand_ = Hand::free;
  setCursor(Qt::ArrowCursor);
}

void SectionDrawing::mouseDoubleClickEvent(QMouseEvent* event) {
  if (event->button() == Qt::LeftButton && !overGrip(event->position())) fitAll();
}

void SectionDrawing::turnTowards(const QPointF& place) {
  const SectionPoint at = map_.toSection(place);
  if (at.r != 0 || at.z != 0) laser_->point(degrees(std::atan2(at.z, std::max(at.r, 0.0))));
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
    case Qt::Key_Space:
      return select(laser_->zone(), event->modifiers() & Qt::ControlModifier);
    default:
      QWidget::keyPressEvent(event);
  }
}

QString SectionDrawing::tipAt(const QPointF& place) const {
  if (overGrip(place)) return tr("Drag to turn the laser");
  if (place.x() > room().right() && place.y() < room().bottom())
    return strip_words(picture_.beam(), picture_.dark(), map_, place.y(), bench_->inches());
  return zoneAt(place);
}

bool SectionDrawing::event(QEvent* event) {
  if (event->type() != QEvent::ToolTip) return QWidget::event(event);
  const auto* help = static_cast<QHelpEvent*>(event);
  QToolTip::showText(help->globalPos(), tipAt(QPointF(help->pos())), this);
  return true;
}

}  // namespace prismwright
