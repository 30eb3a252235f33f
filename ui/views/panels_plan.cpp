#include "ui/views/panels_plan.h"

#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr double kBeamLength = 26;  ///< pixels of a beam's arrow, number beyond it

/// Screen place at an azimuth (anticlockwise from the right) and a radius.
QPointF at(double azimuth_deg, double radius) {
  return {radius * std::cos(radians(azimuth_deg)), -radius * std::sin(radians(azimuth_deg))};
}

void draw_beam(QPainter& painter, double azimuth_deg, double from) {
  const QPointF tip = at(azimuth_deg, from + kBeamLength);
  painter.drawLine(at(azimuth_deg, from + 4), tip);
  for (const double turn : {150.0, -150.0}) painter.drawLine(tip, tip + at(azimuth_deg + turn, 7));
}

}  // namespace

PanelsPlan::PanelsPlan(Workbench* bench, PanelsModel* model, QWidget* parent)
    : QWidget(parent), bench_(bench), model_(model) {
  setObjectName(QStringLiteral("panelsPlan"));
  setMinimumSize(220, 220);
  setAccessibleName(tr("Panels seen from above"));
  connect(model_, &PanelsModel::panelsChanged, this, qOverload<>(&QWidget::update));
  connect(model_, &PanelsModel::modelReset, this, qOverload<>(&QWidget::update));
}

void PanelsPlan::setMarked(int panel) {
  marked_ = panel;
  update();
}

double PanelsPlan::outerRadius() const {
  return std::max(40.0, std::min(width(), height()) / 2.0 - kBeamLength - 26);
}

/// A panel bends round the focus where its refracting band turns about the lens axis, else it is flat.
QPainterPath PanelsPlan::panelPath(const PanelPlace& place, double inner, double outer) const {
  QPainterPath path;
  const double span = place.to_deg - place.from_deg;
  const bool flat = !bench_->values().turns_about_lens(Band::refracting) && span < 120;
  if (flat) {
    // The flat stands across the panel's axis; both rims are drawn square to it.
    const double half = span / 2;
    const double middle = (place.from_deg + place.to_deg) / 2;
    const double depth = (outer - inner) / outer;
    const double rim = 1 / std::cos(radians(half));
    const double fit = outer / std::max(rim, 1.0);
    path.moveTo(at(middle - half, fit * rim));
    path.lineTo(at(middle + half, fit * rim));
    path.lineTo(at(middle + half, fit * rim * (1 - depth)));
    path.lineTo(at(middle - half, fit * rim * (1 - depth)));
  } else {
    const QRectF big(-outer, -outer, 2 * outer, 2 * outer);
    const QRectF small(-inner, -inner, 2 * inner, 2 * inner);
    path.arcMoveTo(big, place.from_deg);
    path.arcTo(big, place.from_deg, span);
    path.arcTo(small, place.to_deg, -span);
  }
  path.closeSubpath();
  return path;
}

void PanelsPlan::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.translate(width() / 2.0, height() / 2.0);
  const double outer = outerRadius();
  const double inner = 0.86 * outer;
  const std::vector<PanelPlace> places = place_panels(model_->panels());
  for (std::size_t i = 0; i < places.size(); ++i) {
    const Panel& panel = model_->panels()[i];
    const bool marked = places[i].number == marked_;
    const QPainterPath path = panelPath(places[i], inner, outer);
    painter.setPen(QPen(marked ? palette::sea() : palette::glass_edge(), marked ? 2.5 : 1.2));
    painter.setBrush(panel.blind ? QBrush(palette::muted_ink(), Qt::BDiagPattern)
                                 : QBrush(palette::glass_fill()));
    painter.drawPath(path);
    painter.setPen(QPen(palette::brass(), 1.5));
    if (!panel.blind) {
      draw_beam(painter, places[i].axis_deg, outer);
      painter.setPen(QPen(palette::brass(), 0.8, Qt::DashLine));
      painter.drawLine(QPointF(0, 0), at(places[i].axis_deg, inner));
    }
    const double label_at = panel.blind ? (places[i].from_deg + places[i].to_deg) / 2 : places[i].axis_deg;
    const QPointF label = at(label_at, outer + kBeamLength + 12);
    painter.setPen(marked ? palette::sea() : palette::ink());
    painter.drawText(QRectF(label.x() - 20, label.y() - 10, 40, 20), Qt::AlignCenter,
                     QString::number(places[i].number));
  }
  painter.setPen(QPen(palette::ink(), 1.2));
  painter.setBrush(palette::surface());
  painter.drawEllipse(QPointF(0, 0), 4, 4);
}

void PanelsPlan::mousePressEvent(QMouseEvent* event) {
  const QPointF place = event->position() - QPointF(width() / 2.0, height() / 2.0);
  const double outer = outerRadius();
  for (const PanelPlace& panel : place_panels(model_->panels()))
    if (panelPath(panel, 0.5 * outer, 1.2 * outer).contains(place)) emit panelClicked(panel.number);
}

}  // namespace prismwright
