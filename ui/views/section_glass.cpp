#include "ui/views/section_glass.h"

#include <algorithm>
#include <cmath>

#include "ui/style/palette.h"

namespace prismwright {
namespace {

// Fine enough that no chord shows at the greatest enlargement (200 pixels a millimetre).
constexpr double kChord_mm = 0.002;
// One pixel and no more: a wider line takes five times as long to draw, at every move of a drag.
constexpr double kEdge_px = 1;

DrawnPrism drawn(const Zone& zone, const Profile& profile) {
  DrawnPrism prism{QString::fromStdString(zone.mark), polygon_of(profile, kChord_mm), {}};
  const auto nearest = std::min_element(
      prism.outline.begin(), prism.outline.end(),
      [](SectionPoint a, SectionPoint b) { return std::hypot(a.r, a.z) < std::hypot(b.r, b.z); });
  if (nearest != prism.outline.end()) prism.name_place = *nearest;
  if (!is_refracting(zone.kind)) return prism;
  // The upright inner face carries the mark at its middle.
  if (const Face* inner = profile.find(FaceRole::inner))
    prism.name_place = between(inner->start(), inner->end(), 0.5);
  return prism;
}

}  // namespace

std::vector<DrawnPrism> drawn_prisms(const Section& section) {
  std::vector<DrawnPrism> prisms;
  for (const Zone& zone : section.zones) {
    prisms.push_back(drawn(zone, zone.profile));
    if (zone.kind == ZoneKind::ring) prisms.push_back(drawn(zone, lower_image_of(zone)));
  }
  return prisms;
}

QRectF box_of(const std::vector<DrawnPrism>& prisms) {
  double right = 1, low = 0, high = 0;
  for (const DrawnPrism& prism : prisms) {
    for (const SectionPoint& point : prism.outline) {
      right = std::max(right, point.r);
      low = std::min(low, point.z);
      high = std::max(high, point.z);
    }
  }
  return {0, low, right, std::max(high - low, 1.0)};
}

QPainterPath outline_of(const DrawnPrism& prism, const SectionMap& map) {
  QPolygonF corners;
  corners.reserve(static_cast<qsizetype>(prism.outline.size()));
  for (const SectionPoint& point : prism.outline) corners << map.toView(point);
  QPainterPath path;
  path.addPolygon(corners);
  path.closeSubpath();
  return path;
}

void paint_glass(QPainter& painter, const std::vector<DrawnPrism>& prisms, const SectionMap& map,
                 const QSet<QString>& selected) {
  QColor chosen = palette::sea();
  chosen.setAlphaF(0.45F);
  for (const DrawnPrism& prism : prisms) {
    const bool is_chosen = selected.contains(prism.zone);
    painter.setPen(is_chosen ? QPen(palette::sea(), 2.2) : QPen(palette::glass_edge(), kEdge_px));
    painter.setBrush(is_chosen ? chosen : palette::glass_fill());
    painter.drawPath(outline_of(prism, map));
  }
  painter.setBrush(Qt::NoBrush);
}

void paint_ribs(QPainter& painter, const std::vector<SectionRib>& ribs, const SectionMap& map) {
  for (const SectionRib& rib : ribs) {
    const QRectF bar(map.toView({rib.low.r, rib.high.z}), map.toView({rib.high.r, rib.low.z}));
    painter.fillRect(bar, palette::surface());
    painter.setPen(QPen(palette::brass(), 1.4));
    painter.setBrush(QBrush(palette::brass(), Qt::BDiagPattern));
    painter.drawRect(bar);
  }
  painter.setBrush(Qt::NoBrush);
}

void paint_overlay(QPainter& painter, const std::vector<DrawnPrism>& prisms, const SectionMap& map,
                   Qt::PenStyle style) {
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(palette::ink(), style == Qt::DashLine ? 1.3 : 1.6, style));
  for (const DrawnPrism& prism : prisms) painter.drawPath(outline_of(prism, map));
}

void paint_marks(QPainter& painter, const std::vector<DrawnPrism>& prisms, const SectionMap& map,
                 const QRectF& view, const QSet<QString>& selected) {
  QFont font = painter.font();
  font.setPointSizeF(8);
  painter.setFont(font);
  const QFontMetricsF metrics(font);
  QColor ground = palette::surface();
  ground.setAlphaF(0.82F);
  std::vector<QRectF> taken;
  for (const DrawnPrism& prism : prisms) {
    const QSizeF size(metrics.horizontalAdvance(prism.zone) + 6, metrics.height());
    const QPointF place = map.toView(prism.name_place);
    const QRectF label(place.x() - 5 - size.width(), place.y() - size.height() / 2, size.width(),
                       size.height());
    const bool covers = std::any_of(taken.begin(), taken.end(), [&](const QRectF& other) {
      return other.intersects(label.adjusted(-1, -1, 1, 1));
    });
    if (covers || !view.contains(label)) continue;
    taken.push_back(label);
    const bool is_chosen = selected.contains(prism.zone);
    painter.setPen(Qt::NoPen);
    painter.setBrush(is_chosen ? palette::sea() : ground);
    painter.drawRoundedRect(label, 3, 3);
    painter.setPen(is_chosen ? palette::on_sea() : palette::ink());
    painter.drawText(label, Qt::AlignCenter, prism.zone);
  }
  painter.setBrush(Qt::NoBrush);
}

void paint_lit(QPainter& painter, const DrawnPrism& prism, const SectionMap& map) {
  QColor fill = palette::brass();
  fill.setAlphaF(0.30F);
  painter.setPen(QPen(palette::brass(), 2.2));
  painter.setBrush(fill);
  painter.drawPath(outline_of(prism, map));
  painter.setBrush(Qt::NoBrush);
}

}  // namespace prismwright
