#include "ui/views/flash_plot.h"

#include <qcustomplot.h>

#include <algorithm>
#include <cmath>

#include "ui/models/light_numbers.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr int kStripHeight = 84;
constexpr double kRoomForWords_px = 44;

QCPAxis* across(QCPAxisRect* field) { return field->axis(QCPAxis::atBottom); }
QCPAxis* upward(QCPAxisRect* field) { return field->axis(QCPAxis::atLeft); }

void put(QCPItemPosition* place, QCPAxisRect* field, double x, double y) {
  place->setAxisRect(field);
  place->setAxes(across(field), upward(field));
  place->setType(QCPItemPosition::ptPlotCoords);
  place->setCoords(x, y);
}

QVector<double> vector_of(const std::vector<double>& values) { return {values.begin(), values.end()}; }

}  // namespace

FlashPlot::FlashPlot(QWidget* parent) : LightPlot(QStringLiteral("light.flash"), tr("Flash"), parent) {
  plot()->setInteractions(QCP::iRangeDrag | QCP::iRangeZoom);
  turn_field_ = makeField();
  strip_field_ = makeField();
  flash_field_ = makeField();
  plot()->plotLayout()->setRowSpacing(0);
  strip_field_->setMinimumSize(0, kStripHeight);
  strip_field_->setMaximumSize(QWIDGETSIZE_MAX, kStripHeight);
  strip_field_->setRangeDrag({});
  strip_field_->setRangeZoom({});
  upward(strip_field_)->setTicks(false);
  upward(strip_field_)->setRange(0, 1);
  upward(strip_field_)->grid()->setVisible(false);
  auto* sides = new QCPMarginGroup(plot());
  for (QCPAxisRect* field : {turn_field_, strip_field_, flash_field_}) {
    field->setMarginGroup(QCP::msLeft | QCP::msRight, sides);
    across(field)->ticker()->setTickCount(8);
    upward(field)->ticker()->setTickCount(4);
  }
  for (QCPAxisRect* field : {turn_field_, flash_field_}) {
    field->setRangeDrag(Qt::Horizontal);
    field->setRangeZoom(Qt::Horizontal);
  }
  arrange(true, true);
  setReport(nullptr);
}

/// The fields that have something to show, one over the other.
void FlashPlot::arrange(bool strip, bool flash) {
  QCPLayoutGrid* grid = plot()->plotLayout();
  for (QCPAxisRect* field : {turn_field_, strip_field_, flash_field_}) {
    if (field->layout()) grid->take(field);
    field->setVisible(false);
  }
  grid->simplify();
  const std::pair<QCPAxisRect*, bool> wanted[] = {
      {turn_field_, true}, {strip_field_, strip}, {flash_field_, flash}};
  for (const auto& [field, seen] : wanted) {
    if (!seen) continue;
    field->setVisible(true);
    grid->addElement(grid->rowCount(), 0, field);
  }
}

void FlashPlot::clearAll() {
  plot()->clearItems();
  plot()->clearPlottables();
  strip_words_.clear();
}

void FlashPlot::setReport(std::shared_ptr<const LightReport> report) {
  report_ = std::move(report);
  setFilled(report_ != nullptr);
  clearAll();
  setReading({});
  if (report_) {
    const bool turns = report_->rhythm.turn_s > 0;
    const std::vector<Flash>& flashes = report_->rhythm.flashes;
    const auto strongest = std::max_element(flashes.begin(), flashes.end(), [](const Flash& a, const Flash& b) {
      return a.effective.blondel_rey_cd < b.effective.blondel_rey_cd;
    });
    flash_ = static_cast<std::size_t>(strongest - flashes.begin());
    arrange(turns, !flashes.empty());
    turns ? fillTurn() : fillRound();
    if (turns) fillStrip();
    if (!flashes.empty()) fillFlash();
    readAt(turns && !flashes.empty() ? flashes[flash_].peak_s : 0);
  }
  plot()->replot(QCustomPlot::rpQueuedReplot);
}

void FlashPlot::fillTurn() {
  const Rhythm& rhythm = report_->rhythm;
  nameAxis(across(turn_field_), tr("time over one turn, s"));
  nameAxis(upward(turn_field_), tr("intensity, cd"));
  QColor ground = palette::brass();
  ground.setAlphaF(0.18F);
  auto* curve = new QCPGraph(across(turn_field_), upward(turn_field_));
  curve->setData(vector_of(rhythm.light.s), vector_of(rhythm.light.cd), true);
  curve->setPen(QPen(palette::ink(), 1.3));
  curve->setBrush(ground);
  curve->setAdaptiveSampling(false);
  across(turn_field_)->setRange(0, rhythm.turn_s);
  upward(turn_field_)->setRange(0, 1.06 * std::max(rhythm.peak_cd, 1e-9));
}

/// The panels' lights where they point, each with its own dashes.
void FlashPlot::fillRound() {
  nameAxis(across(turn_field_), tr("azimuth round the lens, deg (anticlockwise from the axis of panel 1)"));
  nameAxis(upward(turn_field_), tr("each panel, cd"));
  double peak = 0;
  for (const PanelCurve& panel : report_->curves) {
    if (panel.cd.empty()) continue;
    auto* curve = new QCPGraph(across(turn_field_), upward(turn_field_));
    for (std::size_t i = 0; i < panel.cd.size(); ++i) {
      const double azimuth = panel.axis_deg + panel.from_deg + static_cast<double>(i) * panel.step_deg;
      curve->addData(azimuth, panel.cd[i]);
      peak = std::max(peak, panel.cd[i]);
    }
    curve->setPen(palette::screen_pen(panel.screen, 1.3));
    curve->setAdaptiveSampling(false);
  }
  bool found = false;
  QCPRange range;
  for (int i = 0; i < plot()->graphCount(); ++i) {
    const QCPRange own = plot()->graph(i)->getKeyRange(found);
    range = i == 0 ? own : range.expanded(own);
  }
  across(turn_field_)->setRange(range);
  upward(turn_field_)->setRange(0, 1.06 * std::max(peak, 1e-9));
}

void FlashPlot::addBlock(double from_s, double to_s, Screen screen, const QString& words) {
  for (const bool hatching : {false, true}) {
    auto* block = new QCPItemRect(plot());
    block->setClipAxisRect(strip_field_);
    put(block->topLeft, strip_field_, from_s, 1);
    put(block->bottomRight, strip_field_, to_s, 0);
    block->setPen(QPen(palette::muted_ink(), 1));
    block->setBrush(hatching ? palette::screen_hatching(screen) : QBrush(palette::screen(screen)));
    block->setSelectable(false);
  }
  strip_words_ << words;
  const double period = across(strip_field_)->range().size();
  const double width_px = (to_s - from_s) / period * std::max(plot()->width() - 120, 400);
  auto* text = new QCPItemText(plot());
  text->setClipToAxisRect(false);
  const bool inside = width_px > 2 * kRoomForWords_px;
  put(text->position, strip_field_, inside ? 0.5 * (from_s + to_s) : to_s, 0.5);
  text->setPositionAlignment((inside ? Qt::AlignHCenter : Qt::AlignLeft) | Qt::AlignVCenter);
  text->setPadding(QMargins(4, 1, 4, 1));
  text->setText(words);
  text->setColor(inside ? palette::ink_on(palette::screen(screen)) : QColor(Qt::white));
  if (inside) text->setBrush(palette::screen(screen));
  text->setSelectable(false);
}

/// One period: light where it lasts, dark between.
void FlashPlot::fillStrip() {
  const Rhythm& rhythm = report_->rhythm;
  const bool dark = !rhythm.flashes.empty();
  const double period = dark ? rhythm.period_s : rhythm.turn_s;
  nameAxis(across(strip_field_),
           dark ? tr("one period of %1, s; light at half of each peak and over").arg(seconds_text(period))
                : tr("one turn, s: never dark"));
  across(strip_field_)->setRange(0, period);
  auto* night = new QCPItemRect(plot());
  night->setClipAxisRect(strip_field_);
  put(night->topLeft, strip_field_, 0, 1);
  put(night->bottomRight, strip_field_, period, 0);
  night->setPen(QPen(palette::muted_ink(), 1));
  night->setBrush(palette::dark_of_light());
  night->setSelectable(false);
  if (!dark) return addBlock(0, period, Screen::none, tr("steady light"));
  // The strip begins a little before the first flash, so that no flash is parted at its ends.
  // It begins near nought, though the first flash may come just before the period is over.
  const double first = rhythm.flashes.front().half_start_s - 0.02 * period;
  const double back = first > 0.5 * period ? period : 0;
  const double start = first - back;
  across(strip_field_)->setRange(start, start + period);
  put(night->topLeft, strip_field_, start, 1);
  put(night->bottomRight, strip_field_, start + period, 0);
  for (const Flash& flash : rhythm.flashes)
    addBlock(flash.half_start_s - back, flash.half_end_s - back, flash.screen,
             tr("%1 %2").arg(palette::screen_sign(flash.screen), seconds_text(flash.length_s())));
}

void FlashPlot::addLength(double from_s, double to_s, double cd, const QString& words, Qt::PenStyle style) {
  auto* line = new QCPItemLine(plot());
  line->setClipAxisRect(flash_field_);
  put(line->start, flash_field_, from_s, cd);
  put(line->end, flash_field_, to_s, cd);
  line->setPen(QPen(palette::amiss(), 1.5, style));
  line->setHead(QCPLineEnding(QCPLineEnding::esBar, 8));
  line->setTail(QCPLineEnding(QCPLineEnding::esBar, 8));
  line->setSelectable(false);
  auto* text = new QCPItemText(plot());
  text->setClipAxisRect(flash_field_);
  put(text->position, flash_field_, 0.5 * (from_s + to_s), cd);
  text->setPositionAlignment(Qt::AlignHCenter | Qt::AlignBottom);
  text->setPadding(QMargins(4, 0, 4, 2));
  text->setText(words);
  text->setColor(palette::ink());
  text->setSelectable(false);
}

void FlashPlot::fillFlash() {
  const Flash& flash = report_->rhythm.flashes[flash_];
  nameAxis(across(flash_field_), report_->rhythm.flashes.size() > 1
                                     ? tr("flash %1 of %2, of panel %3: time, s")
                                           .arg(flash_ + 1)
                                           .arg(report_->rhythm.flashes.size())
                                           .arg(flash.panel)
                                     : tr("the flash, of panel %1: time, s").arg(flash.panel));
  nameAxis(upward(flash_field_), tr("intensity, cd"));
  const double room = 0.35 * flash.foot_length_s();
  const double from = flash.start_s - room;
  const double to = flash.end_s + room;
  auto* curve = new QCPGraph(across(flash_field_), upward(flash_field_));
  const Rhythm& rhythm = report_->rhythm;
  // A flash at the start of the turn is joined by what its end holds.
  for (const double shift : {-rhythm.turn_s, 0.0, rhythm.turn_s})
    for (std::size_t i = 0; i < rhythm.light.s.size(); ++i) {
      const double at = rhythm.light.s[i] + shift;
      if (at >= from - room && at <= to + room) curve->addData(at, rhythm.light.cd[i]);
    }
  curve->setPen(palette::screen_pen(flash.screen, 1.5));
  QColor ground = palette::brass();
  ground.setAlphaF(0.18F);
  curve->setBrush(ground);
  curve->setAdaptiveSampling(false);
  across(flash_field_)->setRange(from, to);
  upward(flash_field_)->setRange(0, 1.12 * std::max(flash.peak_cd, 1e-9));
  addLength(flash.half_start_s, flash.half_end_s, kHalfPeak * flash.peak_cd,
            tr("%1 at half").arg(seconds_text(flash.length_s())), Qt::SolidLine);
  addLength(flash.start_s, flash.end_s, kFoot * flash.peak_cd,
            tr("%1 at a twentieth").arg(seconds_text(flash.foot_length_s())), Qt::DashLine);
}

double FlashPlot::intensityAt(double time_s) const {
  const FlashCurve& light = report_->rhythm.light;
  if (light.s.size() < 2) return 0;
  double at = std::fmod(time_s, report_->rhythm.turn_s);
  if (at < 0) at += report_->rhythm.turn_s;
  const auto above = std::upper_bound(light.s.begin(), light.s.end(), at);
  const auto i = std::clamp<std::ptrdiff_t>(above - light.s.begin(), 1, std::ssize(light.s) - 1);
  const auto high = static_cast<std::size_t>(i);
  const double share = (at - light.s[high - 1]) / (light.s[high] - light.s[high - 1]);
  return light.cd[high - 1] + share * (light.cd[high] - light.cd[high - 1]);
}

QString FlashPlot::wordsAt(double time_s) const {
  const Rhythm& rhythm = report_->rhythm;
  if (rhythm.turn_s > 0)
    return tr("%1: %2, %3").arg(seconds_text(time_s), candela_text(intensityAt(time_s)), lightWordsAt(time_s));
  QStringList parts;
  for (std::size_t i = 0; i < report_->curves.size(); ++i) {
    const double cd = report_->curves[i].at(time_s - report_->curves[i].axis_deg);
    if (cd > 0) parts << tr("panel %1 %2").arg(i + 1).arg(candela_text(cd));
  }
  return tr("azimuth %1: %2").arg(degrees_text(time_s), parts.isEmpty() ? tr("dark") : parts.join(", "));
}

/// Which flash of the period a moment lies in.
QString FlashPlot::lightWordsAt(double time_s) const {
  const Rhythm& rhythm = report_->rhythm;
  if (rhythm.steady || rhythm.flashes.empty()) return tr("steady light");
  for (std::size_t i = 0; i < rhythm.flashes.size(); ++i) {
    const Flash& flash = rhythm.flashes[i];
    const double from_start = time_s - flash.half_start_s;
    const double into = from_start - rhythm.period_s * std::floor(from_start / rhythm.period_s);
    if (into <= flash.length_s()) return tr("flash %1, %2").arg(i + 1).arg(palette::screen_words(flash.screen));
  }
  return tr("under half of a peak");
}

void FlashPlot::readAt(double x) {
  cursor_ = x;
  setReading(report_ ? wordsAt(x) : QString());
}

void FlashPlot::pointAt(const QPointF& pixel) {
  QCPAxisRect* field = report_ ? plot()->axisRectAt(pixel) : nullptr;
  if (field && field->visible()) readAt(across(field)->pixelToCoord(pixel.x()));
}

/// The flash of the period that was clicked is enlarged.
void FlashPlot::click(const QPointF& pixel) {
  pointAt(pixel);
  if (!report_ || report_->rhythm.flashes.empty() || plot()->axisRectAt(pixel) == flash_field_) return;
  const Rhythm& rhythm = report_->rhythm;
  const auto away = [&](const Flash& flash) {
    return std::abs(std::remainder(cursor_ - flash.peak_s, rhythm.period_s));
  };
  const auto nearest = std::min_element(rhythm.flashes.begin(), rhythm.flashes.end(),
                                        [&](const Flash& a, const Flash& b) { return away(a) < away(b); });
  flash_ = static_cast<std::size_t>(nearest - rhythm.flashes.begin());
  const QCPRange shown = across(turn_field_)->range();
  clearAll();
  fillTurn();
  across(turn_field_)->setRange(shown);
  fillStrip();
  fillFlash();
  plot()->replot();
}

/// A hundredth of the flash enlarged, or a degree.
void FlashPlot::step(int steps, int) {
  if (!report_) return;
  const Rhythm& rhythm = report_->rhythm;
  const double stride = rhythm.turn_s <= 0       ? 1
                        : rhythm.flashes.empty() ? rhythm.turn_s / 100
                                                 : rhythm.flashes[flash_].foot_length_s() / 50;
  readAt(cursor_ + steps * stride);
}

void FlashPlot::showAll() { setReport(report_); }

PlotNumbers FlashPlot::numbers() const {
  if (!report_ || report_->rhythm.turn_s > 0) {
    PlotNumbers numbers{{"time_s", "intensity_cd"}, {}};
    if (!report_) return numbers;
    const FlashCurve& light = report_->rhythm.light;
    for (std::size_t i = 0; i < light.s.size(); ++i)
      numbers.rows.push_back({plot_number(light.s[i]), plot_number(light.cd[i])});
    return numbers;
  }
  PlotNumbers numbers{{"panel", "azimuth_deg", "intensity_cd"}, {}};
  for (std::size_t p = 0; p < report_->curves.size(); ++p) {
    const PanelCurve& panel = report_->curves[p];
    for (std::size_t i = 0; i < panel.cd.size(); ++i)
      numbers.rows.push_back(
          {QString::number(p + 1),
           plot_number(panel.axis_deg + panel.from_deg + static_cast<double>(i) * panel.step_deg),
           plot_number(panel.cd[i])});
  }
  return numbers;
}

}  // namespace prismwright
