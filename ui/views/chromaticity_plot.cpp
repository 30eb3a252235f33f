#include "ui/views/chromaticity_plot.h"

#include <qcustomplot.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "core/light/colour_loci.h"
#include "core/light/signal_regions.h"
#include "ui/style/palette.h"
#include "ui/views/chromaticity_items.h"

namespace prismwright {
namespace {

const QCPRange kAcross{-0.14, 0.8};
const QCPRange kUp{-0.04, 0.9};
constexpr double kStep = 0.001;
constexpr double kMark_px = 11;
constexpr std::array<int, 9> kNamed_nm{460, 480, 490, 500, 520, 540, 580, 600, 700};
/// Clear of the warm lights of lamps, which crowd the line below 4000 K.
constexpr std::array<int, 4> kNamed_k{4000, 6500, 10000, 25000};
constexpr double kColdest_k = 1000;
constexpr double kHottest_k = 25000;
constexpr int kBlackBodies = 120;
constexpr Chromaticity kEqual{1.0 / 3, 1.0 / 3};  ///< equal energy: about the middle of the diagram

QString text_of(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}
QString digits(double value) { return QString::number(value, 'f', 4).replace('-', QChar(0x2212)); }

Screen screen_of_word(std::string_view word) {
  for (const Screen screen : {Screen::red, Screen::green, Screen::yellow})
    if (colour_word(screen) == word) return screen;
  return Screen::none;
}

struct RegionWords {
  Chromaticity at;
  Qt::Alignment side;
};
/// Where the words of a region stand, clear of the other regions.
RegionWords place_of(const SignalRegion& region) {
  switch (screen_of_word(region.colour)) {
    case Screen::red:
      return {{0.715, 0.305}, Qt::AlignLeft | Qt::AlignVCenter};
    case Screen::green:
      return {{0.17, 0.46}, Qt::AlignHCenter | Qt::AlignVCenter};
    case Screen::yellow:
      return {{0.56, 0.44}, Qt::AlignLeft | Qt::AlignBottom};
    case Screen::none:
      break;
  }
  return {{0.36, 0.32}, Qt::AlignLeft | Qt::AlignTop};
}

/// The side on which the words of a light stand, apart from those of its neighbours.
Qt::Alignment side_of(Screen screen) {
  if (screen == Screen::none) return Qt::AlignHCenter | Qt::AlignBottom;
  return (screen == Screen::yellow ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter;
}

}  // namespace

ChromaticityPlot::ChromaticityPlot(QWidget* parent)
    : LightPlot(QStringLiteral("light.chromaticity"), tr("Colours of the light"), parent) {
  plot()->setInteractions(QCP::iRangeDrag | QCP::iRangeZoom);
  field_ = makeField();
  plot()->plotLayout()->addElement(0, 0, field_);
  nameAxis(field_->axis(QCPAxis::atBottom), tr("x, CIE 1931"));
  nameAxis(field_->axis(QCPAxis::atLeft), tr("y, CIE 1931"));
  connect(plot(), &QCustomPlot::afterLayout, this, &ChromaticityPlot::evenScales);
  showAll();
  setReport(nullptr, {});
}

void ChromaticityPlot::setReport(std::shared_ptr<const LightReport> report, std::set<Screen> used) {
  report_ = std::move(report);
  used_ = std::move(used);
  setFilled(report_ != nullptr);
  marks_.clear();
  plot()->clearItems();
  plot()->clearPlottables();
  drawLoci();
  drawRegions();
  drawLights();
  if (report_) readAt(report_->colours.of(Screen::none).at);
  plot()->replot(QCustomPlot::rpQueuedReplot);
}

void ChromaticityPlot::drawLoci() {
  const ChromaticityItems items(plot(), field_);
  std::vector<Chromaticity> pure;
  for (const LocusPoint& point : spectral_locus()) pure.push_back(point.at);
  QColor ground = palette::paper();
  items.line(pure, QPen(palette::muted_ink(), 1.2), true, ground);
  for (const LocusPoint& point : spectral_locus()) {
    const auto nm = static_cast<int>(std::lround(point.value));
    if (std::find(kNamed_nm.begin(), kNamed_nm.end(), nm) == kNamed_nm.end()) continue;
    items.mark(point.at, ChromaticityItems::Shape::disc, QPen(palette::muted_ink(), 1), palette::muted_ink(),
               3);
    items.wordsBeyond(point.at, kEqual, tr("%1 nm").arg(nm), palette::muted_ink());
  }
  std::vector<Chromaticity> hot;
  for (const LocusPoint& point : black_body_locus(kColdest_k, kHottest_k, kBlackBodies))
    hot.push_back(point.at);
  items.line(hot, QPen(palette::ink(), 1, Qt::DashDotLine), false);
  for (const int kelvin : kNamed_k) {
    const Chromaticity at = black_body_locus(kelvin, kHottest_k, 2).front().at;
    items.mark(at, ChromaticityItems::Shape::tick, QPen(palette::ink(), 1), Qt::NoBrush, 7);
    items.words(at, tr("%1 K").arg(kelvin), Qt::AlignRight | Qt::AlignBottom, palette::muted_ink(), 2);
  }
}

void ChromaticityPlot::drawRegions() {
  const ChromaticityItems items(plot(), field_);
  QStringList key{tr("Outlines: regions of\n%1").arg(text_of(kAidsToNavigation))};
  for (const SignalRegion& region : signal_regions()) {
    const Screen screen = screen_of_word(region.colour);
    const bool judged = region.rule == kAidsToNavigation;
    QPen pen = palette::screen_pen(screen, judged ? 1.8 : 1.2);
    pen.setStyle(judged ? Qt::SolidLine : Qt::DotLine);
    items.line(region.corners, pen, true);
    if (!judged) {
      key << tr("Dotted: %1 of\n%2").arg(palette::screen_words(screen), text_of(region.rule));
      continue;
    }
    const RegionWords words = place_of(region);
    items.words(words.at, palette::screen_words(screen), words.side, palette::ink());
  }
  key << tr("Dash-dot: black bodies") << tr("Full marks: shown by a panel") << tr("Hollow marks: on no panel")
      << tr("Diamond: the lamp itself");
  items.key(key.join('\n'), palette::muted_ink());
}

void ChromaticityPlot::addLamp() {
  const ChromaticityItems items(plot(), field_);
  const Chromaticity& at = report_->colours.lamp;
  items.mark(at, ChromaticityItems::Shape::diamond, QPen(palette::ink(), 1.5), Qt::NoBrush, kMark_px + 3);
  items.words(at, tr("lamp"), Qt::AlignHCenter | Qt::AlignTop, palette::ink(), 0, 12);
  marks_ << tr("lamp");
}

void ChromaticityPlot::addLight(const ScreenColour& light, bool used) {
  const ChromaticityItems items(plot(), field_);
  const QPen pen(palette::ink(), used ? 1.2 : 1.6);
  items.mark(light.at, ChromaticityItems::Shape::disc, pen,
             used ? QBrush(palette::screen(light.screen)) : QBrush(Qt::NoBrush), kMark_px);
  const QString sign = palette::screen_sign(light.screen);
  items.words(light.at, used ? tr("%1 %2").arg(sign, palette::screen_words(light.screen)) : sign,
              side_of(light.screen), palette::ink(), 0, light.screen == Screen::none ? 12 : 8);
  marks_ << (used ? tr("%1 %2") : tr("%1 %2, on no panel")).arg(sign, palette::screen_words(light.screen));
}

void ChromaticityPlot::drawLights() {
  if (!report_) return;
  addLamp();
  for (const ScreenColour& light : report_->colours.screens) addLight(light, used_.contains(light.screen));
}

QPointF ChromaticityPlot::pixelOf(const Chromaticity& at) const {
  return {field_->axis(QCPAxis::atBottom)->coordToPixel(at.x),
          field_->axis(QCPAxis::atLeft)->coordToPixel(at.y)};
}

void ChromaticityPlot::showAll() {
  field_->axis(QCPAxis::atBottom)->setRange(kAcross);
  field_->axis(QCPAxis::atLeft)->setRange(kUp);
  evenScales();
  plot()->replot(QCustomPlot::rpQueuedReplot);
}

void ChromaticityPlot::resizeEvent(QResizeEvent* event) {
  LightPlot::resizeEvent(event);
  showAll();
}

void ChromaticityPlot::evenScales() {
  if (field_->width() < 1 || field_->height() < 1) return;
  QCPAxis* across = field_->axis(QCPAxis::atBottom);
  QCPAxis* up = field_->axis(QCPAxis::atLeft);
  const double across_unit = across->range().size() / field_->width();
  const double up_unit = up->range().size() / field_->height();
  if (std::abs(across_unit - up_unit) < 1e-9 * up_unit) return;
  // Spare room stands at the right and above.
  const double unit = std::max(across_unit, up_unit);
  across->setRange(across->range().lower, across->range().lower + unit * field_->width());
  up->setRange(up->range().lower, up->range().lower + unit * field_->height());
}

void ChromaticityPlot::readAt(const Chromaticity& at) {
  place_ = at;
  QStringList held;
  for (const SignalRegion& region : signal_regions())
    if (holds(region, at)) held << tr("%1 of %2").arg(text_of(region.colour), text_of(region.rule));
  const QString place = tr("x %1, y %2").arg(digits(at.x), digits(at.y));
  setReading(held.isEmpty() ? tr("%1: in no region").arg(place)
                            : tr("%1: in %2").arg(place, held.join(tr(" and "))));
}

void ChromaticityPlot::pointAt(const QPointF& pixel) {
  if (!field_->rect().contains(pixel.toPoint())) return;
  readAt({field_->axis(QCPAxis::atBottom)->pixelToCoord(pixel.x()),
          field_->axis(QCPAxis::atLeft)->pixelToCoord(pixel.y())});
}
void ChromaticityPlot::click(const QPointF& pixel) { pointAt(pixel); }
void ChromaticityPlot::step(int across, int up) { readAt({place_.x + kStep * across, place_.y + kStep * up}); }

PlotNumbers ChromaticityPlot::numbers() const {
  PlotNumbers numbers{{"part", "name", "x", "y"}, {}};
  const auto add = [&](const QString& part, const QString& name, const Chromaticity& at) {
    numbers.rows.push_back({part, name, plot_number(at.x), plot_number(at.y)});
  };
  if (report_) {
    add("light", "lamp", report_->colours.lamp);
    for (const ScreenColour& light : report_->colours.screens)
      add("light", text_of(colour_word(light.screen)), light.at);
  }
  for (const SignalRegion& region : signal_regions())
    for (const Chromaticity& corner : region.corners)
      add("region " + text_of(region.rule), text_of(region.colour), corner);
  for (const LocusPoint& point : spectral_locus()) add("nm", plot_number(point.value), point.at);
  for (const LocusPoint& point : black_body_locus(kColdest_k, kHottest_k, kBlackBodies))
    add("black body K", plot_number(point.value), point.at);
  return numbers;
}

}  // namespace prismwright
