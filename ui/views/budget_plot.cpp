#include "ui/views/budget_plot.h"

#include <qcustomplot.h>

#include <algorithm>
#include <cmath>

#include "ui/models/light_numbers.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr double kBarWidth = 0.7;

/// Fates from the top down.
double row_of(int fate) { return kLightFates - 1 - fate; }

QBrush brush_of(LightFate fate) {
  const bool pattern = fate != LightFate::level;
  return {palette::light_fate(fate), pattern ? Qt::Dense3Pattern : Qt::SolidPattern};
}

QCPBars* bars_on(QCPAxis* key, QCPAxis* value, const QColor& edge, const QBrush& brush) {
  auto* bars = new QCPBars(key, value);
  bars->setWidth(kBarWidth);
  bars->setPen(QPen(edge, 1));
  bars->setBrush(brush);
  return bars;
}

}  // namespace

BudgetPlot::BudgetPlot(QWidget* parent)
    : LightPlot(QStringLiteral("light.budget"), tr("Where the light goes"), parent) {
  plot()->setInteractions({});
  fates_ = makeField();
  zones_ = makeField();
  plot()->plotLayout()->addElement(0, 0, fates_);
  plot()->plotLayout()->addElement(1, 0, zones_);
  plot()->plotLayout()->setRowStretchFactor(0, 1.4);
  plot()->plotLayout()->setRowSpacing(0);
  nameAxis(fates_->axis(QCPAxis::atBottom), tr("share of the lamp's light, %"));
  nameAxis(zones_->axis(QCPAxis::atLeft), tr("lm"));
  nameAxis(zones_->axis(QCPAxis::atBottom), tr("zone: solid, by the prisms' own ways; hatched, stray"));
  fates_->axis(QCPAxis::atLeft)->grid()->setVisible(false);
  zones_->axis(QCPAxis::atBottom)->grid()->setVisible(false);
  zones_->axis(QCPAxis::atLeft)->ticker()->setTickCount(3);
}

void BudgetPlot::setReport(std::shared_ptr<const LightReport> report) {
  report_ = std::move(report);
  setFilled(report_ != nullptr);
  plot()->clearItems();
  plot()->clearPlottables();
  setReading({});
  if (report_) {
    fillFates();
    fillZones();
    readFate(0);
  }
  plot()->replot(QCustomPlot::rpQueuedReplot);
}

void BudgetPlot::fillFates() {
  const FluxBudget& budget = report_->budget;
  QCPAxis* names = fates_->axis(QCPAxis::atLeft);
  QCPAxis* shares = fates_->axis(QCPAxis::atBottom);
  QSharedPointer<QCPAxisTickerText> words(new QCPAxisTickerText);
  double most = 0;
  for (int i = 0; i < kLightFates; ++i) {
    const auto fate = static_cast<LightFate>(i);
    const double share = budget.flux_lm > 0 ? budget.of(fate) / budget.flux_lm : 0;
    most = std::max(most, share);
    words->addTick(row_of(i), palette::light_fate_words(fate));
    bars_on(names, shares, palette::light_fate(fate), brush_of(fate))->addData(row_of(i), 100 * share);
    auto* text = new QCPItemText(plot());
    text->setClipAxisRect(fates_);
    text->position->setAxes(shares, names);
    text->position->setCoords(100 * share, row_of(i));
    text->setPositionAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    text->setPadding(QMargins(6, 0, 6, 0));
    text->setText(percent_text(share));
    text->setColor(palette::ink());
    text->setSelectable(false);
  }
  names->setTicker(words);
  names->setTickLength(0, 0);
  names->setRange(-0.6, kLightFates - 0.4);
  shares->setRange(0, 115 * std::max(most, 1e-6));
}

void BudgetPlot::fillZones() {
  QCPAxis* names = zones_->axis(QCPAxis::atBottom);
  QCPAxis* flux = zones_->axis(QCPAxis::atLeft);
  const std::vector<ZoneFlux>& zones = report_->budget.zones;
  QSharedPointer<QCPAxisTickerText> words(new QCPAxisTickerText);
  auto* level = bars_on(names, flux, palette::light_fate(LightFate::level), brush_of(LightFate::level));
  auto* stray = bars_on(names, flux, palette::light_fate(LightFate::stray_up), brush_of(LightFate::stray_up));
  stray->moveAbove(level);
  for (QCPBars* bars : {level, stray}) bars->setStackingGap(0);
  double most = 0;
  for (std::size_t i = 0; i < zones.size(); ++i) {
    const auto place = static_cast<double>(i);
    words->addTick(place, QString::fromStdString(zones[i].zone));
    level->addData(place, zones[i].level_lm);
    stray->addData(place, zones[i].stray_lm);
    most = std::max(most, zones[i].level_lm + zones[i].stray_lm);
  }
  names->setTicker(words);
  names->setTickLength(0, 0);
  // Many zones: their marks stand upright, so that they do not run into one another.
  names->setTickLabelRotation(zones.size() > 16 ? 90 : 0);
  names->setRange(-0.6, static_cast<double>(zones.size()) - 0.4);
  flux->setRange(0, 1.06 * std::max(most, 1e-9));
}

void BudgetPlot::readFate(int fate) {
  if (!report_) return;
  fate_ = std::clamp(fate, 0, kLightFates - 1);
  const auto of = static_cast<LightFate>(fate_);
  const FluxBudget& budget = report_->budget;
  const double error = budget.error_lm[static_cast<std::size_t>(fate_)];
  setReading(tr("%1: %2 lm of %3 lm, %4; standard error %5")
                 .arg(palette::light_fate_words(of), light_number(budget.of(of)), light_number(budget.flux_lm),
                      percent_text(budget.of(of) / budget.flux_lm), percent_text(error / budget.flux_lm)));
}

void BudgetPlot::readZone(int zone) {
  if (!report_ || report_->budget.zones.empty()) return;
  zone_ = std::clamp(zone, 0, static_cast<int>(report_->budget.zones.size()) - 1);
  const ZoneFlux& flux = report_->budget.zones[static_cast<std::size_t>(zone_)];
  setReading(
      tr("%1: %2 lm by the prisms' own ways, %3 lm stray")
          .arg(QString::fromStdString(flux.zone), light_number(flux.level_lm), light_number(flux.stray_lm)));
}

void BudgetPlot::pointAt(const QPointF& pixel) {
  const QCPAxisRect* field = plot()->axisRectAt(pixel);
  if (field == fates_)
    readFate(kLightFates - 1 -
             static_cast<int>(std::lround(fates_->axis(QCPAxis::atLeft)->pixelToCoord(pixel.y()))));
  if (field == zones_)
    readZone(static_cast<int>(std::lround(zones_->axis(QCPAxis::atBottom)->pixelToCoord(pixel.x()))));
}

void BudgetPlot::step(int across, int up) {
  if (up != 0) readFate(fate_ - up);
  if (across != 0) readZone(zone_ + across);
}

PlotNumbers BudgetPlot::numbers() const {
  PlotNumbers numbers{{"part", "flux_lm", "share", "error_lm", "stray_lm"}, {}};
  if (!report_) return numbers;
  const FluxBudget& budget = report_->budget;
  for (int i = 0; i < kLightFates; ++i) {
    const auto fate = static_cast<LightFate>(i);
    const std::string_view name = name_of(fate);
    numbers.rows.push_back(
        {QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size())).replace(',', ' '),
         plot_number(budget.of(fate)), plot_number(budget.flux_lm > 0 ? budget.of(fate) / budget.flux_lm : 0),
         plot_number(budget.error_lm[static_cast<std::size_t>(i)]), QString()});
  }
  for (const ZoneFlux& zone : budget.zones)
    numbers.rows.push_back({tr("zone %1").arg(QString::fromStdString(zone.zone)), plot_number(zone.level_lm),
                            plot_number(budget.flux_lm > 0 ? zone.level_lm / budget.flux_lm : 0), QString(),
                            plot_number(zone.stray_lm)});
  return numbers;
}

}  // namespace prismwright
