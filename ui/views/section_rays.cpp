#include "ui/views/section_rays.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/angle.h"
#include "ui/style/palette.h"

namespace prismwright {

namespace {

/// How far a ray from `place` runs in its direction before it is out of `view` for good; 0 when it is already.
double run_inside(QPointF place, QPointF direction, const QRectF& view) {
  const auto along = [](double from, double step, double low, double high) {
    if (std::abs(step) < 1e-12) return std::numeric_limits<double>::max();
    return ((step > 0 ? high : low) - from) / step;
  };
  return std::max(0.0, std::min(along(place.x(), direction.x(), view.left(), view.right()),
                                along(place.y(), direction.y(), view.top(), view.bottom())));
}

}  // namespace

QPolygonF way_of(const RayPath& path, const SectionMap& map, const QRectF& view) {
  QPolygonF way;
  for (const SectionPoint& point : path.points) way << map.toView(point);
  if (way.isEmpty()) way << map.toView({0, 0});
  if (leaves_lens(path)) {
    const double angle = radians(last_direction_deg(path));
    const QPointF direction(std::cos(angle), -std::sin(angle));
    // No farther than can be seen: dashes far out of sight cost as much as those in it.
    way << way.back() + run_inside(way.back(), direction, view.adjusted(-4, -4, 4, 4)) * direction;
  }
  return way;
}

void paint_loss(QPainter& painter, QPointF place, const QColor& colour, double arm) {
  painter.setPen(QPen(colour, 1.6));
  painter.drawLine(place + QPointF(-arm, -arm), place + QPointF(arm, arm));
  painter.drawLine(place + QPointF(-arm, arm), place + QPointF(arm, -arm));
}

void paint_fan(QPainter& painter, const std::vector<RayPath>& rays, const SectionMap& map, const QRectF& view) {
  // Level light first: the rays that go astray or are lost must not be hidden under it.
  for (const bool level : {true, false}) {
    for (const RayPath& path : rays) {
      if ((path.fate == Fate::level) != level) continue;
      QPen pen = palette::fate_pen(path.fate, level ? 0.7 : 0.9);
      // What is lost in every corner of every prism is marked by its cross; its line may stand back. Paler, not
      // translucent, which takes four times as long to draw.
      if (!leaves_lens(path.fate)) pen.setColor(palette::between(palette::surface(), pen.color(), 0.5));
      painter.setPen(pen);
      painter.drawPolyline(way_of(path, map, view));
      if (const auto loss = place_of_loss(path))
        paint_loss(painter, map.toView(*loss), palette::fate(path.fate), 3);
    }
  }
}

}  // namespace prismwright
