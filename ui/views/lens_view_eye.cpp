// The part of LensView that moves the eye and pins words to places of the lens.
#include <QLineF>
#include <algorithm>
#include <cmath>

#include "ui/views/lens_view.h"

namespace prismwright {
namespace {

constexpr double kSeawardElevation_deg = 12;
constexpr double kLampOpening_deg = 75;
constexpr int kMostMarks = 12;  // more labels than this would hide the lens

}  // namespace

int LensView::leadingPanel() const {
  for (const QString& mark : scene_->selection() + scene_->chosenParts())
    if (scene_->has(mark)) return std::max(scene_->piece(mark)->part().panel, 1);
  return 1;
}

double LensView::axisOf(int panel) const {
  if (!scene_->lens()) return 0;
  for (const PanelPlace& place : scene_->lens()->panels)
    if (place.number == panel) return place.axis_deg;
  return 0;
}

void LensView::showNamed(NamedView view) {
  named_ = view;
  if (!scene_) return;
  LensCamera& eye = gl_->camera();
  const double axis_deg = axisOf(leadingPanel());
  std::vector<gp_Pnt> points = scene_->corners({});
  switch (view) {
    case NamedView::seaward:
      eye.standOutside(axis_deg, kSeawardElevation_deg);
      break;
    case NamedView::plan:
      // The seaward arrow points to the right, as the section is drawn.
      eye.standOutside(axis_deg - 90, 90);
      break;
    case NamedView::face:
      eye.standOutside(axis_deg, 0);
      if (scene_->lens()) {
        QStringList of_panel;
        for (const LensPart& part : scene_->lens()->parts)
          if (part.panel == leadingPanel()) of_panel << QString::fromStdString(part.mark);
        if (!of_panel.isEmpty()) points = scene_->corners(of_panel);
      }
      break;
    case NamedView::lamp:
      eye.standInFocus(axis_deg, 0, kLampOpening_deg);
      points.clear();
      break;
  }
  eye.frame(points, gl_->width(), gl_->height());
  gl_->cameraMoved(false);
}

void LensView::showSelected() {
  if (!scene_) return;
  QStringList present;
  for (const QString& mark : scene_->selection() + scene_->chosenParts())
    if (scene_->has(mark)) present << mark;
  LensCamera& eye = gl_->camera();
  if (present.isEmpty() && eye.stand() == LensCamera::Stand::lamp) return showNamed(NamedView::lamp);
  if (eye.stand() == LensCamera::Stand::outside && !present.isEmpty()) {
    // Turned so that the leading prism faces the eye; the slope of the view stays.
    const double elevation_deg = std::clamp(eye.elevation_deg(), -60.0, 60.0);
    eye.standOutside(axisOf(leadingPanel()), elevation_deg);
  }
  eye.frame(scene_->corners(present), gl_->width(), gl_->height());
  gl_->cameraMoved(false);
}

QPoint LensView::placeOf(const QString& mark) {
  const QPoint nowhere(-1, -1);
  if (!scene_ || !scene_->has(mark)) return nowhere;
  const Handle(LensPiece) piece = scene_->piece(mark);
  const Poly_Triangulation& mesh = *piece->part().mesh->outside;
  const gp_Trsf place = piece->placeNow();
  const int stride = std::max(1, mesh.NbTriangles() / 200);
  for (int t = 1; t <= mesh.NbTriangles(); t += stride) {
    int a = 0;
    int b = 0;
    int c = 0;
    mesh.Triangle(t).Get(a, b, c);
    const gp_XYZ middle = (mesh.Node(a).XYZ() + mesh.Node(b).XYZ() + mesh.Node(c).XYZ()) / 3.0;
    bool in_front = false;
    const QPoint at = gl_->project(gp_Pnt(middle).Transformed(place), &in_front).toPoint();
    if (in_front && rect().contains(at) && markAt(at) == mark) return at;
  }
  return nowhere;
}

void LensView::addRoseLabels(QVector<LensOverlay::Label>& labels) const {
  const LensCamera& eye = gl_->camera();
  const LensRose& rose = scene_->rose();
  if (!scene_->lens() || scene_->lens()->parts.empty() || eye.stand() == LensCamera::Stand::lamp) return;
  for (const PanelPlace& panel : rose.panels) {
    if (panel.number == rose.arrow_panel) continue;  // its number stands at the tip of the arrow
    const double away_deg = std::abs(std::remainder(panel.axis_deg - eye.azimuth_deg(), 360.0));
    const bool far = away_deg > 90 && eye.elevation_deg() < 60;
    labels.push_back({gl_->project(rose.numberPlace(panel)), QStringLiteral("%1").arg(panel.number),
                      far ? LensOverlay::Tone::far_panel : LensOverlay::Tone::panel});
  }
  // Beyond the tip, whichever way the arrow points on the screen.
  const QString words = tr("seaward %1").arg(rose.arrow_panel);
  const QPointF tip = gl_->project(rose.arrowTip());
  const QLineF out(gl_->project(gp_Pnt(0, 0, rose.level_mm)), tip);
  const double length = std::max(out.length(), 1.0);
  const QPointF half(fontMetrics().horizontalAdvance(words) / 2.0, fontMetrics().height() / 2.0);
  labels.push_back(
      {tip + QPointF(half.x() * out.dx(), half.y() * out.dy()) / length, words, LensOverlay::Tone::arrow});
}

void LensView::placeLabels() {
  QVector<LensOverlay::Label> labels;
  addRoseLabels(labels);
  bool in_front = false;
  for (const QString& mark : (scene_->selection() + scene_->chosenParts()).mid(0, kMostMarks)) {
    const auto anchor = scene_->anchor(mark);
    if (!anchor) continue;
    const QPointF at = gl_->project(*anchor, &in_front);
    if (in_front && rect().contains(at.toPoint())) labels.push_back({at, mark, LensOverlay::Tone::mark});
  }
  if (const auto ends = scene_->gapEnds()) {
    const gp_Pnt middle((ends->first.XYZ() + ends->second.XYZ()) * 0.5);
    const QPointF at = gl_->project(middle, &in_front);
    if (in_front) labels.push_back({at, gap_words_, LensOverlay::Tone::gap});
  }
  overlay_->setLabels(std::move(labels));
  const LensCamera& eye = gl_->camera();
  const bool lamp = eye.stand() == LensCamera::Stand::lamp;
  overlay_->setReading(lamp ? tr("From the lamp: looking %1° round, %2° up, opening %3°")
                                  .arg(eye.azimuth_deg(), 0, 'f', 0)
                                  .arg(eye.elevation_deg(), 0, 'f', 0)
                                  .arg(eye.opening_deg(), 0, 'f', 0)
                            : QString());
}

}  // namespace prismwright
