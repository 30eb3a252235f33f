#include "ui/views/section_rays.h"

#include <cmath>

#include "core/base/angle.h"
#include "ui/style/palette.h"

namespace prismwright {

QPolygonF way_of(const RayPath& path, const SectionMap& map, const QRectF& view) {
  QPolygonF way;
  for (const SectionPoint& point : path.points) way << map.toView(point);
  if (way.isEmpty()) way << map.toView({0, 0});
  if (leaves_lens(path)) {
    const double reach = 2 * (view.width() + view.height()) + QLineF(way.back(), view.center()).length();
    const double angle = radians(last_direction_deg(path));
    way << way.back() + QPointF(reach * std::cos(angle), -reach * std::sin(angle));
  }
  return way;
}

void paint_loss(QPainter& painter, QPointF place, const QColor& colour, double arm) {
  painter.setPen(QPen(colour, 1.6));
  painter.drawLine(place + QPointF(-arm, -arm), place + QPointF(arm, arm));
  painter.drawLine(place + QPointF(-arm, arm), place + QPointF(arm, -arm));
}

void paint_fan(QPainter& painter, const std::vector<RayPath>& rays, const SectionMap& map, const QRectF& view) {
  const double opacity = painter.opacity();
  // Level light first: the rays that go astray or are lost must not be hidden under it.
  for (const bool level : {true, false}) {
    for (const RayPath& path : rays) {
      if ((path.fate == Fate::level) != level) continue;
      painter.setPen(palette::fate_pen(path.fate, level ? 0.7 : 0.9));
      // What is lost in every corner of every prism is marked by its cross; its line may stand back.
      painter.setOpacity(level || leaves_lens(path.fate) ? opacity : 0.5 * opacity);
      painter.drawPolyline(way_of(path, map, view));
      painter.setOpacity(opacity);
      if (const auto loss = place_of_loss(path))
        paint_loss(painter, map.toView(*loss), palette::fate(path.fate), 3);
    }
  }
}

}  // namespace prismwright
