#include "ui/views/loss_bars.h"

#include <qcustomplot.h>

#include <algorithm>
#include <cmath>

#include "ui/models/errors_words.h"
#include "ui/models/light_numbers.h"
#include "ui/models/zone_selection.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr double kBarWidth = 0.7;
constexpr int kAxisRoom_px = 56;  // under the bars: ticks and words of the axis
constexpr int kFewestBars = 4;

QString words_of(const LossRow& loss) {
  return LossBars::tr("%1, %2").arg(QString::fromStdString(loss.zone), error_words(loss.kind));
}

}  // namespace

LossBars::LossBars(Workbench* bench, QWidget* parent)
    : LightPlot(QStringLiteral("errors.losses"), tr("Loss of peak by zone and error"), parent), bench_(bench) {
  plot()->setInteractions({});
  field_ = makeField();
  plot()->plotLayout()->addElement(0, 0, field_);
  nameAxis(field_->axis(QCPAxis::atBottom), tr("mean loss of the panel's peak, %"));
  field_->axis(QCPAxis::atLeft)->grid()->setVisible(false);
  field_->axis(QCPAxis::atLeft)->setTickLength(0, 0);
  field_->axis(QCPAxis::atBottom)->ticker()->setTickCount(3);
  connect(bench_, &Workbench::selectionChanged, this, &LossBars::fill);
  setErrors(nullptr);
}

void LossBars::setErrors(std::shared_ptr<const SettingErrors> errors) {
  errors_ = std::move(errors);
  setFilled(errors_ != nullptr);
  bar_ = 0;
  setReading({});
  fill();
  readBar(0);
}

/// As many bars as can be read; all of them are saved.
int LossBars::roomForBars() const {
  const int line = plot()->fontMetrics().height() + 6;
  return std::max(kFewestBars, (plot()->height() - kAxisRoom_px) / line);
}

void LossBars::resizeEvent(QResizeEvent* event) {
  LightPlot::resizeEvent(event);
  fill();
}

void LossBars::fill() {
  plot()->clearItems();
  plot()->clearPlottables();
  bars_.clear();
  QCPAxis* names = field_->axis(QCPAxis::atLeft);
  QCPAxis* losses = field_->axis(QCPAxis::atBottom);
  for (QCPAxis* axis : {names, losses}) axis->setVisible(errors_ != nullptr);
  if (errors_) {
    const QSet<QString> zones = selected_zones(*bench_);
    const auto count = std::min(errors_->losses.size(), static_cast<std::size_t>(roomForBars()));
    QSharedPointer<QCPAxisTickerText> ticks(new QCPAxisTickerText);
    for (std::size_t i = 0; i < count; ++i) {
      const LossRow& loss = errors_->losses[i];
      bars_ << words_of(loss);
      ticks->addTick(-static_cast<double>(i), bars_.back());
      addBar(static_cast<int>(i), loss, zones.contains(QString::fromStdString(loss.zone)));
    }
    names->setTicker(ticks);
    names->setRange(-static_cast<double>(count) + 0.4, 0.6);
    const double most = errors_->losses.empty() ? 0 : errors_->losses.front().loss_percent;
    losses->setRange(0, 1.5 * std::max(most, 1e-6));
  }
  plot()->replot(QCustomPlot::rpQueuedReplot);
}

void LossBars::addBar(int bar, const LossRow& loss, bool selected) {
  QCPAxis* names = field_->axis(QCPAxis::atLeft);
  QCPAxis* losses = field_->axis(QCPAxis::atBottom);
  auto* bars = new QCPBars(names, losses);
  bars->setWidth(kBarWidth);
  bars->setPen(QPen(selected ? palette::sea() : palette::brass(), 1));
  // The selected zone is solid, the others are hatched over their ground.
  bars->setBrush(selected ? QBrush(palette::sea()) : QBrush(palette::brass(), Qt::Dense4Pattern));
  bars->addData(-bar, loss.loss_percent);
  auto* text = new QCPItemText(plot());
  text->setClipAxisRect(field_);
  text->position->setAxes(losses, names);
  text->position->setCoords(std::max(loss.loss_percent, 0.0), -bar);
  text->setPositionAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  text->setPadding(QMargins(6, 0, 6, 0));
  text->setText(percent_text(loss.loss_percent / 100));
  text->setColor(palette::ink());
  text->setSelectable(false);
}

QPointF LossBars::middleOf(int bar) const {
  return {field_->axis(QCPAxis::atBottom)
              ->coordToPixel(0.5 * errors_->losses[static_cast<std::size_t>(bar)].loss_percent),
          field_->axis(QCPAxis::atLeft)->coordToPixel(-bar)};
}

int LossBars::barAt(const QPointF& pixel) const {
  if (!errors_ || bars_.isEmpty()) return -1;
  const auto bar = static_cast<int>(std::lround(-field_->axis(QCPAxis::atLeft)->pixelToCoord(pixel.y())));
  return bar < bars_.size() ? bar : -1;
}

void LossBars::readBar(int bar) {
  if (!errors_ || bars_.isEmpty()) return;
  bar_ = std::clamp(bar, 0, static_cast<int>(bars_.size()) - 1);
  const LossRow& loss = errors_->losses[static_cast<std::size_t>(bar_)];
  setReading(tr("%1: takes %2 of the peak").arg(words_of(loss), percent_text(loss.loss_percent / 100)));
}

void LossBars::pointAt(const QPointF& pixel) {
  if (const int bar = barAt(pixel); bar >= 0) readBar(bar);
}

void LossBars::step(int, int up) { readBar(bar_ - up); }

void LossBars::click(const QPointF& pixel) {
  const int bar = barAt(pixel);
  if (bar < 0) return;
  readBar(bar);
  const QString zone = QString::fromStdString(errors_->losses[static_cast<std::size_t>(bar)].zone);
  select_zones(*bench_, {zone}, zone);
}

PlotNumbers LossBars::numbers() const {
  PlotNumbers numbers{{"zone", "error", "loss_percent_of_peak"}, {}};
  if (!errors_) return numbers;
  for (const LossRow& loss : errors_->losses)
    numbers.rows.push_back(
        {QString::fromStdString(loss.zone), error_words(loss.kind), plot_number(loss.loss_percent)});
  return numbers;
}

}  // namespace prismwright
