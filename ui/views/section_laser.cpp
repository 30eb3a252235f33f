#include "ui/views/section_laser.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "ui/style/palette.h"
#include "ui/views/section_rays.h"

namespace prismwright {
namespace {

constexpr double kGripRadius = 8;
constexpr double kDotRadius = 7;

/// Shares of the line from a to b at which it enters and leaves the box (Liang and Barsky, 1984).
std::optional<std::pair<double, double>> part_inside(QPointF a, QPointF b, const QRectF& box) {
  double from = 0, to = 1;
  const QPointF run = b - a;
  const double across[] = {-run.x(), run.x(), -run.y(), run.y()};
  const double room[] = {a.x() - box.left(), box.right() - a.x(), a.y() - box.top(), box.bottom() - a.y()};
  for (int side = 0; side < 4; ++side) {
    if (across[side] == 0) {
      if (room[side] < 0) return std::nullopt;
      continue;
    }
    const double share = room[side] / across[side];
    if (across[side] < 0)
      from = std::max(from, share);
    else
      to = std::min(to, share);
  }
  if (from > to) return std::nullopt;
  return std::pair{from, to};
}

/// The arc on which the grip runs, with a tick every ten degrees, round the focal point the laser stands in.
void paint_arc(QPainter& painter, SectionPoint source, double reach_mm, const SectionMap& map) {
  const double reach = reach_mm * map.pixelsPerMm();
  const QPointF focus = map.toView(source);
  painter.setPen(QPen(palette::muted_ink(), 0.8));
  painter.drawArc(QRectF(focus.x() - reach, focus.y() - reach, 2 * reach, 2 * reach), -90 * 16, 180 * 16);
  for (int degree = -90; degree <= 90; degree += 10) {
    const QPointF out(std::cos(radians(degree)), -std::sin(radians(degree)));
    painter.drawLine(focus + reach * out, focus + (reach + (degree % 30 == 0 ? 8 : 4)) * out);
  }
  painter.setBrush(palette::surface());
  painter.setPen(QPen(palette::ink(), 1.4));
  painter.drawEllipse(focus, 4.5, 4.5);
  painter.drawLine(focus - QPointF(8, 0), focus + QPointF(8, 0));
  painter.drawLine(focus - QPointF(0, 8), focus + QPointF(0, 8));
}

void paint_ray(QPainter& painter, const RayPath& path, const SectionMap& map, const QRectF& view) {
  const QPolygonF way = way_of(path, map, view);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(palette::surface(), 5));
  painter.drawPolyline(way);
  // Deeper and thicker than the same fate in the fan, so that it is found at a glance.
  QPen pen = palette::fate_pen(path.fate, 2.6);
  pen.setColor(palette::between(pen.color(), palette::ink(), 0.25));
  painter.setPen(pen);
  painter.drawPolyline(way);
  if (const auto loss = place_of_loss(path))
    paint_loss(painter, map.toView(*loss), palette::fate(path.fate), 7);
}

/// Numbers that tie the faces to the rows of the read-out.
void paint_meetings(QPainter& painter, const RayPath& path, const SectionMap& map, const QRectF& view) {
  QFont font = painter.font();
  font.setPointSizeF(7.5);
  font.setBold(true);
  painter.setFont(font);
  QPointF last(-1e6, -1e6);
  for (std::size_t i = 0; i < path.meetings.size(); ++i) {
    const QPointF place = map.toView(path.meetings[i].place);
    if (!view.contains(place)) continue;
    painter.setPen(QPen(palette::ink(), 1));
    painter.setBrush(palette::ink());
    painter.drawEllipse(place, 2.2, 2.2);
    // Beside the face, on the lower right: the ray itself stays in sight.
    QPointF number = place + QPointF(9, 10);
    if (QLineF(number, last).length() < 2 * kDotRadius + 2) number = last + QPointF(2 * kDotRadius + 2, 0);
    last = number;
    painter.setBrush(palette::surface());
    painter.drawEllipse(number, kDotRadius, kDotRadius);
    painter.drawText(QRectF(number.x() - kDotRadius, number.y() - kDotRadius, 2 * kDotRadius, 2 * kDotRadius),
                     Qt::AlignCenter, QString::number(i + 1));
  }
}

void paint_board(QPainter& painter, const Laser& laser, const SectionMap& map, const QRectF& view) {
  const double x = map.toView({laser.board_mm(), 0}).x();
  if (x < view.left() || x > view.right()) return;
  painter.setPen(QPen(palette::ink(), 3));
  painter.drawLine(QPointF(x, view.top()), QPointF(x, view.bottom()));
  if (!laser.spot()) return;
  painter.setBrush(palette::fate(laser.path()->fate));
  painter.setPen(QPen(palette::ink(), 1));
  painter.drawEllipse(map.toView(laser.spot()->place), 5, 5);
}

}  // namespace

std::optional<QPointF> grip_place(const RayPath& path, double reach_mm, const SectionMap& map,
                                  const QRectF& view) {
  const QPointF focus = map.toView(path.points.empty() ? SectionPoint{} : path.points.front());
  const double angle = radians(path.elevation_deg);
  const QPointF out(std::cos(angle), -std::sin(angle));
  const double reach = reach_mm * map.pixelsPerMm();
  const bool meets = path.points.size() > 1;
  const double length = meets ? std::max(reach, QLineF(focus, map.toView(path.points[1])).length()) : 3 * reach;
  const QRectF room = view.adjusted(kGripRadius, kGripRadius, -kGripRadius, -kGripRadius);
  const auto part = part_inside(focus, focus + length * out, room);
  if (!part) return std::nullopt;
  return focus + std::clamp(reach, part->first * length, part->second * length) * out;
}

void paint_laser(QPainter& painter, const Laser& laser, double reach_mm, const SectionMap& map,
                 const QRectF& view, bool focused) {
  paint_arc(painter, {0, laser.source_z_mm()}, reach_mm, map);
  if (!laser.path()) return;
  paint_board(painter, laser, map, view);
  paint_ray(painter, *laser.path(), map, view);
  paint_meetings(painter, *laser.path(), map, view);
  if (const auto grip = grip_place(*laser.path(), reach_mm, map, view)) {
    painter.setPen(QPen(focused ? palette::sea() : palette::ink(), focused ? 2.5 : 1.5));
    painter.setBrush(palette::brass());
    painter.drawEllipse(*grip, kGripRadius, kGripRadius);
    painter.setBrush(palette::surface());
    painter.drawEllipse(*grip, 2.5, 2.5);
  }
}

}  // namespace prismwright
