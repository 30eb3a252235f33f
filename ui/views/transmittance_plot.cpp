#include "ui/views/transmittance_plot.h"

#include <qcustomplot.h>

#include <algorithm>
#include <cmath>

#include "core/light/colour_screen.h"
#include "core/light/light_colours.h"
#include "core/light/tint.h"
#include "ui/models/light_numbers.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr int kFrom_nm = 380;
constexpr int kTo_nm = 780;

template <class Share>
std::vector<double> shares(const Share& share) {
  std::vector<double> values;
  for (int nm = kFrom_nm; nm <= kTo_nm; ++nm) values.push_back(share(nm));
  return values;
}

QString key_of(Screen screen) {
  const std::string_view word = colour_word(screen);
  return QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size()));
}

}  // namespace

TransmittancePlot::TransmittancePlot(Workbench* bench, QWidget* parent)
    : LightPlot(QStringLiteral("light.transmittance"), tr("Transmittance of tint and screens"), parent),
      bench_(bench) {
  plot()->setInteractions({});
  plot()->setMinimumSize(240, 130);
  field_ = makeField();
  plot()->plotLayout()->addElement(0, 0, field_);
  nameAxis(field_->axis(QCPAxis::atBottom), tr("wavelength, nm"));
  nameAxis(field_->axis(QCPAxis::atLeft), tr("let through, %"));
  field_->axis(QCPAxis::atBottom)->setRange(kFrom_nm, kTo_nm);
  field_->axis(QCPAxis::atLeft)->setRange(0, 105);
  plot()->setAutoAddPlottableToLegend(false);
  for (const auto signal : {&Workbench::bookChanged, &Workbench::valuesChanged})
    connect(bench_, signal, this, &TransmittancePlot::follow);
  follow();
}

void TransmittancePlot::follow() {
  curves_.clear();
  plot()->clearItems();
  plot()->clearPlottables();
  if (bench_->hasBook()) {
    const Material& material = bench_->values().material;
    if (const auto tint = tint_of(material))
      curves_.push_back({tr("tint"), "tint", QPen(palette::glass_edge(), 1.6),
                         shares([&](int nm) { return tint->at(nm, material.tint_mm); })});
    for (const Screen screen : {Screen::red, Screen::green, Screen::yellow})
      if (const auto sheet = screen_of(screen, bench_->values().light))
        curves_.push_back({palette::screen_words(screen), key_of(screen), palette::screen_pen(screen, 1.6),
                           shares([&](int nm) { return sheet->at(nm); })});
  }
  for (const Curve& curve : curves_) addCurve(curve);
  setFilled(!curves_.empty());
  readAt(nm_);
  plot()->replot(QCustomPlot::rpQueuedReplot);
}

void TransmittancePlot::addCurve(const Curve& curve) {
  auto* graph = new QCPGraph(field_->axis(QCPAxis::atBottom), field_->axis(QCPAxis::atLeft));
  for (int nm = kFrom_nm; nm <= kTo_nm; ++nm)
    graph->addData(nm, 100 * curve.share[static_cast<std::size_t>(nm - kFrom_nm)]);
  graph->setPen(curve.pen);
}

void TransmittancePlot::readAt(double nm) {
  if (curves_.empty()) return setReading({});
  nm_ = std::clamp(std::round(nm), static_cast<double>(kFrom_nm), static_cast<double>(kTo_nm));
  QStringList parts;
  for (const Curve& curve : curves_)
    parts << tr("%1 %2").arg(curve.name, percent_text(curve.share[static_cast<std::size_t>(nm_ - kFrom_nm)]));
  setReading(tr("%1 nm: %2").arg(nm_).arg(parts.join(", ")));
}

void TransmittancePlot::pointAt(const QPointF& pixel) {
  readAt(field_->axis(QCPAxis::atBottom)->pixelToCoord(pixel.x()));
}
void TransmittancePlot::step(int across, int) { readAt(nm_ + across); }

PlotNumbers TransmittancePlot::numbers() const {
  PlotNumbers numbers{{"wavelength_nm"}, {}};
  for (const Curve& curve : curves_) numbers.heads << curve.key;
  for (int nm = kFrom_nm; nm <= kTo_nm; ++nm) {
    QStringList cells{QString::number(nm)};
    for (const Curve& curve : curves_)
      cells << plot_number(curve.share[static_cast<std::size_t>(nm - kFrom_nm)]);
    numbers.rows.push_back(cells);
  }
  return numbers;
}

}  // namespace prismwright
