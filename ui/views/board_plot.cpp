#include "ui/views/board_plot.h"

#include <qcustomplot.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/inches.h"
#include "ui/models/bench_words.h"
#include "ui/models/shown_numbers.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr double kReach_px = 12;
constexpr double kRoom = 1.15;  // round what is shown
constexpr double kLeastClose_mm = 10;

QCPScatterStyle spot_style() {
  return {QCPScatterStyle::ssCross, QPen(palette::muted_ink(), 1), Qt::NoBrush, 6};
}
QCPScatterStyle chosen_style() {
  return {QCPScatterStyle::ssCross, QPen(palette::sea(), 2.5), Qt::NoBrush, 14};
}
QCPScatterStyle first_style() {
  return {QCPScatterStyle::ssCircle, QPen(palette::amiss(), 1.6), Qt::NoBrush, 16};
}
QCPScatterStyle last_style() {
  return {QCPScatterStyle::ssDisc, QPen(palette::amiss(), 1.6), QBrush(palette::amiss()), 11};
}

/// The same scale up and across, so that the board is seen in its true shape.
void true_shape(QCPAxisRect& field, const QRectF& wanted) {
  if (field.width() <= 0 || field.height() <= 0) return;
  const double per_px = std::max(wanted.width() / field.width(), wanted.height() / field.height());
  const QPointF middle = wanted.center();
  field.axis(QCPAxis::atBottom)->setRange(middle.x(), per_px * field.width(), Qt::AlignCenter);
  field.axis(QCPAxis::atLeft)->setRange(middle.y(), per_px * field.height(), Qt::AlignCenter);
}

QRectF widened(const QRectF& by) {
  const double side = std::max({by.width(), by.height(), 1e-6});
  const double across = std::max(kRoom * by.width(), 0.2 * side);
  const double up = std::max(kRoom * by.height(), 0.2 * side);
  return {by.center().x() - across / 2, by.center().y() - up / 2, across, up};
}

}  // namespace

BoardPlot::BoardPlot(QWidget* parent) : LightPlot(QStringLiteral("light.board"), tr("Board"), parent) {
  plot()->setInteractions({});
  plot()->setMinimumSize(240, 120);
  board_ = makeField();
  close_ = makeField();
  plot()->plotLayout()->addElement(0, 0, board_);
  plot()->plotLayout()->addElement(0, 1, close_);
  for (QCPAxisRect* field : {board_, close_}) field->axis(QCPAxis::atBottom)->setRangeReversed(true);
  legend_ = new QCPLegend;
  close_->insetLayout()->addElement(legend_, Qt::AlignRight | Qt::AlignTop);
  legend_->setLayer(QStringLiteral("legend"));
  legend_->setBrush(Qt::NoBrush);
  legend_->setBorderPen(Qt::NoPen);
  legend_->setTextColor(palette::ink());
  legend_->setIconSize(20, 18);
  legend_->setMargins(QMargins(4, 4, 8, 4));
  plot()->legend = legend_;
  plot()->setAutoAddPlottableToLegend(false);
  nameAxes();
}

double BoardPlot::shown(double mm) const { return inches_ ? mm / kInch_mm : mm; }

void BoardPlot::nameAxes() {
  const QString unit = length_unit(inches_);
  nameAxis(board_->axis(QCPAxis::atBottom), tr("left of the panel's axis, %1").arg(unit));
  nameAxis(board_->axis(QCPAxis::atLeft), tr("over level, %1").arg(unit));
  nameAxis(close_->axis(QCPAxis::atBottom), tr("left of the spot's place, %1").arg(unit));
  nameAxis(close_->axis(QCPAxis::atLeft), tr("over it, %1").arg(unit));
}

void BoardPlot::clear() {
  plot()->clearItems();
  plot()->clearPlottables();
  places_.clear();
  chosen_ = -1;
  first_.reset();
  last_.reset();
}

void BoardPlot::show(const BenchMaker& maker, const QString& mark, bool inches) {
  clear();
  inches_ = inches;
  nameAxes();
  board_mm_ = maker.plan() ? maker.plan()->board_mm : 0;
  const BenchedPrism* of = maker.find(mark);
  const int panel = of ? of->aim->panel : maker.prisms().empty() ? 1 : maker.prisms().front().aim->panel;
  for (const BenchedPrism& prism : maker.prisms()) {
    if (prism.aim->panel != panel || !prism.aim->trouble.empty()) continue;
    if (&prism == of) chosen_ = static_cast<int>(places_.size());
    places_.push_back({QString::fromStdString(prism.aim->mark), prism.aim->spot_at(board_mm_)});
  }
  if (chosen_ >= 0) {
    first_ = of->first;
    last_ = of->last;
  }
  setFilled(!places_.empty());
  setTitle(chosen_ >= 0 ? tr("Board, %1").arg(mark) : tr("Board, panel %1").arg(panel));
  showBoard();
  showReadings();
  fit();
  if (chosen_ >= 0)
    readOff(places_[static_cast<std::size_t>(chosen_)]);
  else
    setReading(of ? QString::fromStdString(of->aim->trouble)
                  : tr("Board of panel %1: click a spot or a row for its readings.").arg(panel));
}

void BoardPlot::addPoints(QCPAxisRect* field, const std::vector<BoardPlace>& places,
                          const QCPScatterStyle& style, const QString& name) {
  auto* points = new QCPCurve(field->axis(QCPAxis::atBottom), field->axis(QCPAxis::atLeft));
  points->setLineStyle(QCPCurve::lsNone);
  points->setScatterStyle(style);
  points->setSelectable(QCP::stNone);
  for (const BoardPlace& place : places) points->addData(shown(place.aside_mm), shown(place.height_mm));
  if (name.isEmpty()) return;
  points->setName(name);
  points->addToLegend(legend_);
}

/// A line through nought, with its words at the field's edge.
void BoardPlot::addLine(QCPAxisRect* field, bool upright, const QString& words) {
  auto* line = new QCPItemStraightLine(plot());
  for (QCPItemPosition* end : line->positions())
    end->setAxes(field->axis(QCPAxis::atBottom), field->axis(QCPAxis::atLeft));
  line->setClipAxisRect(field);
  line->point1->setCoords(0, 0);
  line->point2->setCoords(upright ? 0 : 1, upright ? 1 : 0);
  line->setPen(QPen(palette::muted_ink(), 1, Qt::DashDotLine));
  line->setSelectable(false);
  if (words.isEmpty()) return;
  auto* text = new QCPItemText(plot());
  text->setClipAxisRect(field);
  text->position->setAxisRect(field);
  text->position->setAxes(field->axis(QCPAxis::atBottom), field->axis(QCPAxis::atLeft));
  text->position->setTypeX(upright ? QCPItemPosition::ptPlotCoords : QCPItemPosition::ptAxisRectRatio);
  text->position->setTypeY(upright ? QCPItemPosition::ptAxisRectRatio : QCPItemPosition::ptPlotCoords);
  text->position->setCoords(0, 0);
  text->setPositionAlignment(Qt::AlignLeft | (upright ? Qt::AlignTop : Qt::AlignBottom));
  text->setPadding(QMargins(4, 1, 4, 1));
  text->setText(words);
  text->setColor(palette::muted_ink());
  text->setSelectable(false);
}

void BoardPlot::showBoard() {
  addLine(board_, false, tr("level"));
  addLine(board_, true, tr("axis"));
  std::vector<BoardPlace> all;
  for (const Place& place : places_) all.push_back(place.spot);
  addPoints(board_, all, spot_style(), {});
  if (chosen_ >= 0) addPoints(board_, {places_[static_cast<std::size_t>(chosen_)].spot}, chosen_style(), {});
}

void BoardPlot::showReadings() {
  addLine(close_, false, {});
  addLine(close_, true, {});
  const bool one = chosen_ >= 0;
  addPoints(close_, one ? std::vector<BoardPlace>{{}} : std::vector<BoardPlace>{}, chosen_style(),
            tr("its place"));
  const auto at = [](const std::optional<BenchReading>& reading) {
    return reading ? std::vector<BoardPlace>{{reading->height_mm, reading->aside_mm}}
                   : std::vector<BoardPlace>{};
  };
  addPoints(close_, at(last_), last_style(), tr("last reading"));
  // The hollow ring stands round the full spot where both are the same.
  addPoints(close_, at(first_), first_style(), tr("first reading"));
}

void BoardPlot::fit() {
  // The fields know their sizes only once they have been laid out.
  plot()->replot();
  QRectF all(0, 0, 1e-9, 1e-9);
  const auto take = [](QRectF& into, double x, double y) {
    into = into.united(QRectF(x - 1e-9, y - 1e-9, 2e-9, 2e-9));
  };
  for (const Place& place : places_) take(all, shown(place.spot.aside_mm), shown(place.spot.height_mm));
  true_shape(*board_, widened(all));
  double most = kLeastClose_mm;
  for (const auto& reading : {first_, last_})
    if (reading) most = std::max({most, std::abs(reading->height_mm), std::abs(reading->aside_mm)});
  const double half = shown(kRoom * most);
  true_shape(*close_, {-half, -half, 2 * half, 2 * half});
  plot()->replot(QCustomPlot::rpQueuedReplot);
}

void BoardPlot::resizeEvent(QResizeEvent* event) {
  LightPlot::resizeEvent(event);
  QMetaObject::invokeMethod(this, &BoardPlot::fit, Qt::QueuedConnection);
}

void BoardPlot::readOff(const Place& place) {
  QString text = tr("%1: spot %2, board at %3")
                     .arg(place.mark, place_words(place.spot, inches_), length_text(board_mm_, inches_, 0));
  const bool chosen = chosen_ >= 0 && places_[static_cast<std::size_t>(chosen_)].mark == place.mark;
  if (chosen && last_)
    text += tr("; read %1 of it").arg(place_words({last_->height_mm, last_->aside_mm}, inches_));
  setReading(text);
}

int BoardPlot::nearest(const QPointF& pixel) const {
  int found = -1;
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < places_.size(); ++i) {
    const QPointF at(board_->axis(QCPAxis::atBottom)->coordToPixel(shown(places_[i].spot.aside_mm)),
                     board_->axis(QCPAxis::atLeft)->coordToPixel(shown(places_[i].spot.height_mm)));
    const double away = std::hypot(at.x() - pixel.x(), at.y() - pixel.y());
    if (away > kReach_px || away >= least) continue;
    least = away;
    found = static_cast<int>(i);
  }
  return found;
}

void BoardPlot::pointAt(const QPointF& pixel) {
  if (const int at = nearest(pixel); at >= 0) return readOff(places_[static_cast<std::size_t>(at)]);
  if (chosen_ >= 0) readOff(places_[static_cast<std::size_t>(chosen_)]);
}

void BoardPlot::click(const QPointF& pixel) {
  if (const int at = nearest(pixel); at >= 0) emit picked(places_[static_cast<std::size_t>(at)].mark);
}

/// The arrow keys go from one prism of the panel to the next.
void BoardPlot::step(int across, int up) {
  if (places_.empty()) return;
  const int last = static_cast<int>(places_.size()) - 1;
  emit picked(places_[static_cast<std::size_t>(std::clamp(chosen_ + across - up, 0, last))].mark);
}

PlotNumbers BoardPlot::numbers() const {
  PlotNumbers numbers{{"mark", "what", "height_mm", "aside_mm"}, {}};
  for (const Place& place : places_)
    numbers.rows.push_back({place.mark, QStringLiteral("expected"), plot_number(place.spot.height_mm),
                            plot_number(place.spot.aside_mm)});
  if (chosen_ < 0) return numbers;
  const QString mark = places_[static_cast<std::size_t>(chosen_)].mark;
  const std::pair<const char*, const std::optional<BenchReading>*> readings[] = {
      {"first reading over expected", &first_}, {"last reading over expected", &last_}};
  for (const auto& [what, reading] : readings)
    if (*reading)
      numbers.rows.push_back(
          {mark, QLatin1String(what), plot_number((*reading)->height_mm), plot_number((*reading)->aside_mm)});
  return numbers;
}

}  // namespace prismwright
