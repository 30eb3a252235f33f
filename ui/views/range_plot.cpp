#include "ui/views/range_plot.h"

#include <qcustomplot.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "ui/models/light_numbers.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr double kLeast_nmi = 0.5;  // fog
constexpr double kMost_nmi = 30;    // very clear
constexpr int kPoints = 120;
constexpr std::array<Screen, 4> kScreens = {Screen::none, Screen::red, Screen::green, Screen::yellow};

/// The intensity behind one colour's column of the table, cd.
double intensity_of(const LightReport& report, Screen screen, double threshold_lux) {
  if (report.ranges.empty()) return 0;
  const RangeRow& row = report.ranges.back();
  const double nmi = screen == Screen::red      ? row.red_nmi
                     : screen == Screen::green  ? row.green_nmi
                     : screen == Screen::yellow ? row.yellow_nmi
                                                : row.white_nmi;
  return intensity_for_range_cd(nmi, row.visibility_nmi, threshold_lux);
}

}  // namespace

RangePlot::RangePlot(QWidget* parent) : LightPlot(QStringLiteral("light.range"), tr("Range"), parent) {
  plot()->setInteractions({});
  field_ = makeField();
  plot()->plotLayout()->addElement(0, 0, field_);
  nameAxis(field_->axis(QCPAxis::atBottom), tr("visibility, nautical miles"));
  nameAxis(field_->axis(QCPAxis::atLeft), tr("luminous range, nautical miles"));
  field_->axis(QCPAxis::atBottom)->setRange(0, kMost_nmi);
  auto* legend = new QCPLegend;
  field_->insetLayout()->addElement(legend, Qt::AlignLeft | Qt::AlignTop);
  legend->setLayer(QStringLiteral("legend"));
  legend->setBrush(Qt::NoBrush);
  legend->setBorderPen(Qt::NoPen);
  legend->setTextColor(palette::ink());
  legend->setIconSize(36, 12);
  legend->setMargins(QMargins(12, 4, 4, 4));
  plot()->legend = legend;
  plot()->setAutoAddPlottableToLegend(false);
}

void RangePlot::addCurve(Screen screen, double cd) {
  auto* curve = new QCPGraph(field_->axis(QCPAxis::atBottom), field_->axis(QCPAxis::atLeft));
  for (int i = 0; i <= kPoints; ++i) {
    const double visibility = kLeast_nmi + (kMost_nmi - kLeast_nmi) * i / kPoints;
    curve->addData(visibility, luminous_range_nmi(cd, visibility, settings_.threshold_lux));
  }
  curve->setPen(palette::screen_pen(screen, 1.6));
  curve->setName(palette::screen_words(screen));
  curve->addToLegend(plot()->legend);
}

void RangePlot::addLine(bool upright, double at, const QString& words) {
  QCPAxis* x = field_->axis(QCPAxis::atBottom);
  QCPAxis* y = field_->axis(QCPAxis::atLeft);
  auto* line = new QCPItemStraightLine(plot());
  for (QCPItemPosition* end : line->positions()) end->setAxes(x, y);
  line->setClipAxisRect(field_);
  line->point1->setCoords(upright ? at : 0, upright ? 0 : at);
  line->point2->setCoords(upright ? at : 1, upright ? 1 : at);
  line->setPen(QPen(palette::muted_ink(), 1, Qt::DashDotDotLine));
  line->setSelectable(false);
  auto* text = new QCPItemText(plot());
  text->setClipAxisRect(field_);
  text->position->setAxes(x, y);
  text->position->setCoords(upright ? at : x->range().upper, upright ? y->range().lower : at);
  text->setPositionAlignment(upright ? (Qt::AlignLeft | Qt::AlignBottom) : (Qt::AlignRight | Qt::AlignBottom));
  text->setPadding(QMargins(4, 1, 4, 3));
  text->setText(words);
  text->setColor(palette::muted_ink());
  text->setSelectable(false);
}

void RangePlot::setReport(std::shared_ptr<const LightReport> report, const LightSettings& settings) {
  report_ = std::move(report);
  setFilled(report_ != nullptr);
  settings_ = settings;
  plot()->clearItems();
  plot()->clearPlottables();
  if (report_) {
    for (const Screen screen : kScreens)
      addCurve(screen, intensity_of(*report_, screen, settings_.threshold_lux));
    const double most =
        std::max(report_->ranges.empty() ? 1 : report_->ranges.back().white_nmi, report_->geographic_range_nmi);
    field_->axis(QCPAxis::atLeft)->setRange(0, 1.08 * std::max(most, 0.1));
    if (report_->geographic_range_nmi > 0)
      addLine(false, report_->geographic_range_nmi,
              tr("over the sea's edge: %1").arg(miles_text(report_->geographic_range_nmi)));
    if (settings_.visibility_nmi <= kMost_nmi)
      addLine(true, settings_.visibility_nmi, tr("visibility %1").arg(miles_text(settings_.visibility_nmi)));
    readAt(settings_.visibility_nmi);
  } else {
    setReading({});
  }
  plot()->replot(QCustomPlot::rpQueuedReplot);
}

void RangePlot::readAt(double visibility_nmi) {
  if (!report_) return;
  visibility_nmi_ = std::clamp(visibility_nmi, kLeast_nmi, std::max(kMost_nmi, settings_.visibility_nmi));
  QStringList parts;
  for (const Screen screen : kScreens) {
    const double cd = intensity_of(*report_, screen, settings_.threshold_lux);
    parts << tr("%1 %2").arg(palette::screen_words(screen),
                             miles_text(luminous_range_nmi(cd, visibility_nmi_, settings_.threshold_lux)));
  }
  setReading(tr("visibility %1: %2").arg(miles_text(visibility_nmi_), parts.join(", ")));
}

void RangePlot::pointAt(const QPointF& pixel) {
  readAt(field_->axis(QCPAxis::atBottom)->pixelToCoord(pixel.x()));
}
void RangePlot::step(int across, int) { readAt(visibility_nmi_ + 0.5 * across); }

PlotNumbers RangePlot::numbers() const {
  PlotNumbers numbers{{"visibility_nmi", "white_nmi", "red_nmi", "green_nmi", "yellow_nmi"}, {}};
  if (!report_) return numbers;
  for (const RangeRow& row : report_->ranges) {
    QStringList cells;
    for (const double nmi : {row.visibility_nmi, row.white_nmi, row.red_nmi, row.green_nmi, row.yellow_nmi})
      cells << plot_number(nmi);
    numbers.rows.push_back(cells);
  }
  return numbers;
}

}  // namespace prismwright
