#include "ui/views/section_scales.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>
#include <functional>

#include "core/base/inches.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

/// Calls `line` for every multiple of `step` between two lengths.
void each_line(double from, double to, double step, const std::function<void(double)>& line) {
  for (double k = std::ceil(from / step); k * step <= to; ++k) line(k * step);
}

QString figure(double mm, double step_mm, bool inches) {
  const double value = inches ? mm / kInch_mm : mm;
  const double step = inches ? step_mm / kInch_mm : step_mm;
  const int decimals = std::max(0, static_cast<int>(std::ceil(-std::log10(step) - 1e-9)));
  const double shown = std::abs(value) < step / 2 ? 0 : value;
  return QString::number(shown, 'f', decimals).replace('-', QChar(0x2212));
}

}  // namespace

double grid_step_mm(const SectionMap& map, bool inches, double pixels) {
  const double unit = inches ? kInch_mm : 1;
  const double least = pixels / map.pixelsPerMm() / unit;
  const double power = std::pow(10, std::floor(std::log10(least)));
  for (const double times : {1.0, 2.0, 5.0})
    if (times * power >= least) return times * power * unit;
  return 10 * power * unit;
}

void paint_grid(QPainter& painter, const SectionMap& map, const QRectF& view, bool inches) {
  const double step = grid_step_mm(map, inches);
  const SectionPoint low = map.toSection(view.bottomLeft());
  const SectionPoint high = map.toSection(view.topRight());
  painter.setRenderHint(QPainter::Antialiasing, false);
  const auto pen_at = [](double mm) {
    return std::abs(mm) < 1e-9 ? QPen(palette::muted_ink(), 1, Qt::DashDotLine) : QPen(palette::hairline(), 1);
  };
  each_line(low.r, high.r, step, [&](double r) {
    painter.setPen(pen_at(r));
    const double x = std::round(map.toView({r, 0}).x());
    painter.drawLine(QPointF(x, view.top()), QPointF(x, view.bottom()));
  });
  each_line(low.z, high.z, step, [&](double z) {
    painter.setPen(pen_at(z));
    const double y = std::round(map.toView({0, z}).y());
    painter.drawLine(QPointF(view.left(), y), QPointF(view.right(), y));
  });
  painter.setRenderHint(QPainter::Antialiasing, true);
}

void paint_scales(QPainter& painter, const SectionMap& map, const QRectF& view, bool inches) {
  const double step = grid_step_mm(map, inches);
  const QRectF foot(view.left(), view.bottom() - kScaleFoot, view.width(), kScaleFoot);
  const QRectF left(view.left(), view.top(), kScaleLeft, view.height() - kScaleFoot);
  painter.fillRect(foot, palette::paper());
  painter.fillRect(left, palette::paper());
  painter.setPen(QPen(palette::hairline(), 1));
  painter.drawLine(foot.topLeft(), foot.topRight());
  painter.drawLine(left.topRight(), left.bottomRight());
  painter.setPen(palette::muted_ink());
  const SectionPoint low = map.toSection(left.bottomRight());
  const SectionPoint high = map.toSection(view.topRight());
  each_line(low.r, high.r, step, [&](double r) {
    const double x = map.toView({r, 0}).x();
    if (x < left.right() + 8 || x > view.right() - 40) return;
    painter.drawText(QRectF(x - 30, foot.top(), 60, foot.height()), Qt::AlignCenter, figure(r, step, inches));
  });
  each_line(low.z, high.z, step, [&](double z) {
    const double y = map.toView({0, z}).y();
    if (y < view.top() + 24 || y > left.bottom() - 8) return;
    painter.drawText(QRectF(left.left(), y - 9, left.width() - 6, 18), Qt::AlignRight | Qt::AlignVCenter,
                     figure(z, step, inches));
  });
  const QString unit = inches ? QStringLiteral("in") : QStringLiteral("mm");
  painter.drawText(QRectF(foot.right() - 46, foot.top(), 40, foot.height()), Qt::AlignRight | Qt::AlignVCenter,
                   QCoreApplication::translate("SectionDrawing", "r %1").arg(unit));
  painter.drawText(QRectF(left.left(), view.top() + 4, left.width() - 6, 18), Qt::AlignRight | Qt::AlignVCenter,
                   QCoreApplication::translate("SectionDrawing", "z %1").arg(unit));
}

}  // namespace prismwright
