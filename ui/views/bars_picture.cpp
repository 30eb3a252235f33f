#include "ui/views/bars_picture.h"

#include <QHelpEvent>
#include <QPainter>
#include <QToolTip>
#include <algorithm>
#include <array>
#include <cmath>

#include "ui/models/plan_table.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr int kRow_px = 26;
constexpr int kBar_px = 14;
constexpr int kWords_px = 96;
constexpr int kFoot_px = 24;
constexpr int kMargin_px = 8;
constexpr double kLeastBar_px = 2;

/// Whole days between two lines, so that no more than some eight stand there.
int days_between_lines(double days) {
  constexpr std::array<int, 9> kSteps = {1, 2, 7, 14, 28, 56, 91, 182, 364};
  for (const int step : kSteps)
    if (days / step <= 8) return step;
  return static_cast<int>(std::ceil(days / 8 / 364)) * 364;
}

}  // namespace

BarsPicture::BarsPicture(QWidget* parent) : QWidget(parent) {
  setObjectName(QStringLiteral("works.bars"));
  setMouseTracking(true);
}

void BarsPicture::setPlan(const WorkPlan* plan) {
  plan_ = plan != nullptr ? *plan : WorkPlan{};
  updateGeometry();
  update();
}

QSize BarsPicture::sizeHint() const {
  return {480, static_cast<int>(plan_.bars.size()) * kRow_px + kFoot_px + 2 * kMargin_px};
}

double BarsPicture::pixelOf(double day) const {
  const double room = width() - kWords_px - 2 * kMargin_px;
  return kMargin_px + kWords_px + (plan_.days > 0 ? day / plan_.days * room : 0);
}

QRectF BarsPicture::barOf(WorkStep step) const {
  for (std::size_t i = 0; i < plan_.bars.size(); ++i) {
    if (plan_.bars[i].step != step) continue;
    const double left = pixelOf(plan_.bars[i].from_day);
    const double width = std::max(kLeastBar_px, pixelOf(plan_.bars[i].to_day) - left);
    return {left, kMargin_px + static_cast<double>(i) * kRow_px + (kRow_px - kBar_px) / 2.0, width, kBar_px};
  }
  return {};
}

void BarsPicture::paintDays(QPainter& painter) const {
  const double foot = kMargin_px + static_cast<double>(plan_.bars.size()) * kRow_px;
  const int step = days_between_lines(plan_.days);
  double free_from = 0;
  for (int day = 0; day <= plan_.days; day += step) {
    const double x = pixelOf(day);
    painter.setPen(palette::hairline());
    painter.drawLine(QPointF(x, kMargin_px), QPointF(x, foot));
    const QString words = day_words(plan_.start + std::chrono::days(day));
    const double width = painter.fontMetrics().horizontalAdvance(words);
    const double left = std::min(x - width / 2, this->width() - width - 2);
    if (left < free_from) continue;
    free_from = left + width + 8;
    painter.setPen(palette::muted_ink());
    painter.drawText(QRectF(left, foot + 4, width + 2, kFoot_px - 4), Qt::AlignLeft | Qt::AlignTop, words);
  }
}

void BarsPicture::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), palette::surface());
  if (plan_.bars.empty()) {
    painter.setPen(palette::muted_ink());
    painter.drawText(rect(), Qt::AlignCenter, tr("Nothing is left to do."));
    return;
  }
  paintDays(painter);
  for (const WorkBar& bar : plan_.bars) {
    const QRectF place = barOf(bar.step);
    painter.setPen(palette::ink());
    painter.drawText(QRectF(kMargin_px, place.top() - 4, kWords_px - 8, kBar_px + 8),
                     Qt::AlignVCenter | Qt::AlignLeft, step_words(bar.step));
    painter.fillRect(place, palette::brass());
  }
}

bool BarsPicture::event(QEvent* event) {
  if (event->type() != QEvent::ToolTip) return QWidget::event(event);
  const auto* help = static_cast<QHelpEvent*>(event);
  for (const WorkBar& bar : plan_.bars) {
    if (!barOf(bar.step).adjusted(-2, -4, 2, 4).contains(help->pos())) continue;
    const auto day = [&](double days) {
      return day_words(plan_.start + std::chrono::days(static_cast<int>(days)));
    };
    QToolTip::showText(help->globalPos(),
                       tr("%1: %2 to %3").arg(step_words(bar.step), day(bar.from_day), day(bar.to_day)), this);
    return true;
  }
  QToolTip::hideText();
  return true;
}

}  // namespace prismwright
