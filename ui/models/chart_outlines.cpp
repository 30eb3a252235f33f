#include "ui/models/chart_outlines.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/angle.h"

namespace prismwright {
namespace {

/// Where a prism lets its light out: heights over the axis, and how far out that is.
struct LitBand {
  double low_mm = 0;
  double high_mm = 0;
  double out_mm = 0;
};

LitBand lit_band(const PlannedPrism& prism) {
  const Face* face = prism.profile.find(is_refracting(prism.kind) ? FaceRole::outer : FaceRole::exit);
  std::vector<SectionPoint> points;
  if (face)
    points = face->points;
  else
    points = polygon_of(prism.profile, 0.1);
  LitBand band{std::numeric_limits<double>::max(), std::numeric_limits<double>::lowest(), 0};
  for (const SectionPoint point : points) {
    band.low_mm = std::min(band.low_mm, point.z);
    band.high_mm = std::max(band.high_mm, point.z);
    band.out_mm += point.r / static_cast<double>(points.size());
  }
  return band;
}

/// How far a piece reaches from its panel's axis to a side, seen along the axis; `reach_mm` where the side does
/// not cut it.
double side_mm(double side_deg, const LitBand& band, double set_back_mm, double reach_mm) {
  const double angle = radians(std::abs(side_deg));
  if (std::cos(angle) < 1e-3) return reach_mm;
  return std::clamp((band.out_mm * std::sin(angle) - set_back_mm) / std::cos(angle), 0.0, reach_mm);
}

QPainterPath disc(double radius) {
  QPainterPath path;
  path.addEllipse(QPointF(0, 0), radius, radius);
  return path;
}

QPainterPath box(double left, double top, double right, double bottom) {
  QPainterPath path;
  path.addRect(QRectF(QPointF(left, top), QPointF(right, bottom)));
  return path;
}

/// The face of a ring about the panel's axis between its sides, as seen from seaward: round the place where its
/// turning axis leaves the lens.
ChartPiece face_piece(const PlannedPrism& prism) {
  const LitBand band = lit_band(prism);
  const double inner = std::max(0.0, std::min(std::abs(band.low_mm), std::abs(band.high_mm)));
  const double outer = std::max(std::abs(band.low_mm), std::abs(band.high_mm));
  const double left = -side_mm(prism.trim.clockwise_side_deg, band, prism.trim.set_back_mm, outer);
  const double right = side_mm(prism.trim.anticlockwise_side_deg, band, prism.trim.set_back_mm, outer);
  const double gap = prism.trim.half_gap_mm;
  const double top = prism.trim.half == Half::lower ? gap : -outer;
  const double bottom = prism.trim.half == Half::upper ? -gap : outer;
  const bool centre = prism.kind == ZoneKind::centre;
  QPainterPath ring = disc(outer);
  if (!centre) ring = ring.subtracted(disc(inner));
  const double middle = centre ? 0 : (inner + outer) / 2;
  const double up = prism.axis_z_mm - band.out_mm * std::sin(radians(prism.axis_dip_deg));
  return {QString::fromStdString(prism.mark),
          ring.intersected(box(left, top, right, bottom)).translated(0, -up),
          QPointF(0, (prism.trim.half == Half::lower ? middle : -middle) - up)};
}

/// A belt prism laid flat: its sides stand at equal angles, drawn at the focal distance.
ChartPiece belt_piece(const PlannedPrism& prism, double focal_mm) {
  const LitBand band = lit_band(prism);
  const double left = focal_mm * radians(prism.trim.clockwise_side_deg) + prism.trim.set_back_mm;
  const double right = focal_mm * radians(prism.trim.anticlockwise_side_deg) - prism.trim.set_back_mm;
  return {QString::fromStdString(prism.mark), box(left, -band.high_mm, right, -band.low_mm),
          QPointF((left + right) / 2, -(band.low_mm + band.high_mm) / 2)};
}

/// A panel's own breadth at the focal distance, for one that holds no prisms.
QRectF bare_frame(const LensPlan& plan, const PanelPlace& place) {
  const double focal = plan.values.brief.focal_mm;
  const double half = radians((place.to_deg - place.from_deg) / 2);
  const double across = plan.values.turns_about_lens(Band::refracting)
                            ? focal * half
                            : focal * std::tan(std::min(half, radians(75)));
  return {-across, 0, 2 * across, 0};
}

}  // namespace

std::vector<ChartPanel> chart_panels(const LensPlan& plan) {
  std::vector<ChartPanel> panels;
  double top = 0;
  double bottom = 0;
  for (const PanelPlace& place : plan.panels) {
    ChartPanel panel;
    panel.number = place.number;
    panel.blind = plan.values.panels[static_cast<std::size_t>(place.number - 1)].blind;
    QRectF frame;
    for (const PlannedPrism& prism : plan.prisms) {
      if (prism.panel != place.number) continue;
      panel.pieces.push_back(prism.turning == TurningAxis::panel
                                 ? face_piece(prism)
                                 : belt_piece(prism, plan.values.brief.focal_mm));
      frame = frame.united(panel.pieces.back().outline.boundingRect());
    }
    panel.frame = panel.pieces.empty() ? bare_frame(plan, place) : frame;
    top = std::min(top, panel.frame.top());
    bottom = std::max(bottom, panel.frame.bottom());
    panels.push_back(std::move(panel));
  }
  for (ChartPanel& panel : panels) {
    panel.frame.setTop(top);
    panel.frame.setBottom(bottom);
  }
  return panels;
}

}  // namespace prismwright
