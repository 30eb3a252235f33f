#include "ui/views/section_drawing.h"

#include <QLabel>
#include <QPainter>
#include <cmath>

#include "ui/models/zone_selection.h"
#include "ui/style/palette.h"
#include "ui/views/section_laser.h"
#include "ui/views/section_limit.h"
#include "ui/views/section_scales.h"
#include "ui/views/section_strips.h"

namespace prismwright {
SectionDrawing::SectionDrawing(Workbench* bench, Laser* laser, QWidget* parent)
    : QWidget(parent),
      bench_(bench),
      laser_(laser),
      limits_(new LimitDrag(bench, this)),
      problem_(new QLabel(this)) {
  setObjectName(QStringLiteral("section.drawing"));
  setAccessibleName(tr("Drawing of the section"));
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
  setAttribute(Qt::WA_OpaquePaintEvent);  // the picture covers all of it
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
  connect(bench_, &Workbench::sectionChanged, this, &SectionDrawing::follow);
  connect(bench_, &Workbench::selectionChanged, this, qOverload<>(&QWidget::update));
  connect(bench_, &Workbench::unitsChanged, this, qOverload<>(&QWidget::update));
  connect(laser_, &Laser::moved, this, qOverload<>(&QWidget::update));
  connect(limits_, &LimitDrag::moved, this, qOverload<>(&QWidget::update));
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

void SectionDrawing::setOverlays(const std::vector<SectionOverlay>& overlays) {
  picture_.setOverlays(overlays);
  update();
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
                                      bench_->isPreviewing(), bench_->sectionProblem().has_value()}));
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
  if (const auto held = limitGrip()) paint_limit(painter, *held, *limits_, map_, room());
}

std::optional<LimitGrip> SectionDrawing::limitGrip() const {
  const QString zone = limits_->isHeld() ? limits_->zone() : leading_zone(*bench_);
  if (!bench_->plan() || !limits_->allows(zone)) return std::nullopt;
  const auto grip = limit_grip(bench_->plan()->section, zone);
  return grip && room().contains(map_.toView(grip->place)) ? grip : std::nullopt;
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

}  // namespace prismwright
