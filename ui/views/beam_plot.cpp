#include "ui/views/beam_plot.h"

#include <qcustomplot.h>

#include <algorithm>
#include <cmath>

#include "core/papers/light_paper.h"
#include "ui/models/light_numbers.h"
#include "ui/style/palette.h"
#include "ui/views/contour_lines.h"

namespace prismwright {
namespace {

constexpr double kWorthSeeing = 0.02;  // of the peak: what the map is framed to
constexpr int kUprightWidth = 190;
constexpr int kLevelHeight = 150;
constexpr int kBarWidth = 12;

/// From the ground through brass to sea: lightness runs one way, so that it reads without colours too.
QCPColorGradient ramp() {
  QCPColorGradient gradient;
  gradient.clearColorStops();
  gradient.setColorStopAt(0, palette::surface());
  gradient.setColorStopAt(0.25, palette::between(palette::surface(), palette::brass(), 0.55));
  gradient.setColorStopAt(0.6, palette::between(palette::brass(), palette::sea(), 0.3));
  gradient.setColorStopAt(1, palette::sea());
  return gradient;
}

QCPItemStraightLine* hair_line(QCustomPlot* plot, QCPAxisRect* field, const QPen& pen) {
  auto* line = new QCPItemStraightLine(plot);
  line->setClipAxisRect(field);
  for (QCPItemPosition* end : line->positions()) {
    end->setAxisRect(field);
    end->setAxes(field->axis(QCPAxis::atBottom), field->axis(QCPAxis::atLeft));
  }
  line->setPen(pen);
  line->setSelectable(false);
  return line;
}

}  // namespace

BeamPlot::BeamPlot(QWidget* parent) : LightPlot(QStringLiteral("light.beam"), tr("Beam"), parent) {
  plot()->setInteractions(QCP::iRangeDrag | QCP::iRangeZoom);
  makeFields();
  makeMap();
  makeCuts();
  setBeam(nullptr);
}

void BeamPlot::makeFields() {
  map_field_ = makeField();
  level_field_ = makeField();
  upright_field_ = makeField();
  scale_ = new QCPColorScale(plot());
  key_ = new QCPTextElement(plot(), QString(), plot()->font());
  key_->setTextColor(palette::muted_ink());
  key_->setTextFlags(Qt::AlignLeft | Qt::AlignTop);
  QCPLayoutGrid* grid = plot()->plotLayout();
  grid->setRowSpacing(0);
  grid->setColumnSpacing(0);
  grid->addElement(0, 0, map_field_);
  grid->addElement(0, 1, upright_field_);
  grid->addElement(0, 2, scale_);
  grid->addElement(1, 0, level_field_);
  grid->addElement(1, 1, key_);
  upright_field_->setMaximumSize(kUprightWidth, QWIDGETSIZE_MAX);
  upright_field_->setMinimumSize(kUprightWidth, 0);
  level_field_->setMaximumSize(QWIDGETSIZE_MAX, kLevelHeight);
  level_field_->setMinimumSize(0, kLevelHeight);
  auto* sides = new QCPMarginGroup(plot());
  map_field_->setMarginGroup(QCP::msLeft | QCP::msRight, sides);
  level_field_->setMarginGroup(QCP::msLeft | QCP::msRight, sides);
  auto* ends = new QCPMarginGroup(plot());
  for (QCPLayoutElement* each :
       {static_cast<QCPLayoutElement*>(map_field_), static_cast<QCPLayoutElement*>(upright_field_),
        static_cast<QCPLayoutElement*>(scale_)})
    each->setMarginGroup(QCP::msTop | QCP::msBottom, ends);
}

void BeamPlot::makeMap() {
  QCPAxis* azimuth = map_field_->axis(QCPAxis::atBottom);
  QCPAxis* elevation = map_field_->axis(QCPAxis::atLeft);
  nameAxis(azimuth, tr("azimuth, deg (anticlockwise from the panel's axis)"));
  nameAxis(elevation, tr("elevation, deg"));
  map_ = new QCPColorMap(azimuth, elevation);
  map_->setColorScale(scale_);
  map_->setInterpolate(true);
  map_->setTightBoundary(true);
  scale_->setType(QCPAxis::atRight);
  scale_->setBarWidth(kBarWidth);
  scale_->setGradient(ramp());
  scale_->setRangeDrag(false);
  scale_->setRangeZoom(false);
  dressAxis(scale_->axis());
  scale_->axis()->setLabel(tr("intensity, cd"));
  half_ = new ContourItem(plot(), azimuth, elevation, QPen(palette::ink(), 1.5));
  tenth_ = new ContourItem(plot(), azimuth, elevation, QPen(palette::ink(), 1, Qt::DotLine));
  // Dashes over a paler line: seen on the dark of the peak and on the pale ground alike.
  const QPen pens[] = {QPen(palette::surface(), 1), QPen(palette::amiss(), 1, Qt::DashLine)};
  for (const QPen& pen : pens) {
    across_.push_back(hair_line(plot(), map_field_, pen));
    upright_.push_back(hair_line(plot(), map_field_, pen));
  }
}

void BeamPlot::makeCuts() {
  QCPAxis* azimuth = level_field_->axis(QCPAxis::atBottom);
  QCPAxis* elevation = upright_field_->axis(QCPAxis::atLeft);
  nameAxis(azimuth, tr("level cut: azimuth, deg"));
  nameAxis(level_field_->axis(QCPAxis::atLeft), tr("cd"));
  nameAxis(upright_field_->axis(QCPAxis::atBottom), tr("upright cut: cd"));
  upright_field_->axis(QCPAxis::atBottom)->ticker()->setTickCount(2);
  level_field_->axis(QCPAxis::atLeft)->ticker()->setTickCount(3);
  level_cut_ = new QCPGraph(azimuth, level_field_->axis(QCPAxis::atLeft));
  upright_cut_ = new QCPCurve(upright_field_->axis(QCPAxis::atBottom), elevation);
  QColor ground = palette::brass();
  ground.setAlphaF(0.18F);
  level_cut_->setPen(QPen(palette::ink(), 1.5));
  level_cut_->setBrush(ground);
  upright_cut_->setPen(QPen(palette::ink(), 1.5));
  upright_cut_->setBrush(ground);
  level_cut_->setAdaptiveSampling(false);
  const auto same = qOverload<const QCPRange&>(&QCPAxis::setRange);
  QCPAxis* map_azimuth = map_field_->axis(QCPAxis::atBottom);
  QCPAxis* map_elevation = map_field_->axis(QCPAxis::atLeft);
  const auto changed = qOverload<const QCPRange&>(&QCPAxis::rangeChanged);
  connect(map_azimuth, changed, azimuth, same);
  connect(azimuth, changed, map_azimuth, same);
  connect(map_elevation, changed, elevation, same);
  connect(elevation, changed, map_elevation, same);
  level_field_->setRangeDrag(Qt::Horizontal);
  level_field_->setRangeZoom(Qt::Horizontal);
  upright_field_->setRangeDrag(Qt::Vertical);
  upright_field_->setRangeZoom(Qt::Vertical);
}

void BeamPlot::setBeam(std::shared_ptr<const BeamMap> beam) {
  const bool same_grid = beam_ && beam && beam_->grid.size() == beam->grid.size() &&
                         beam_->grid.azimuth_from_deg == beam->grid.azimuth_from_deg && beam_->peak_cd > 0;
  if (!same_grid) chosen_ = false;
  beam_ = std::move(beam);
  setFilled(beam_ != nullptr);
  // Before the first map there is nothing to measure: an empty field, without lines or scales.
  for (int i = 0; i < plot()->itemCount(); ++i) plot()->item(i)->setVisible(beam_ != nullptr);
  for (QCPAxisRect* field : {map_field_, level_field_, upright_field_})
    for (QCPAxis* axis : {field->axis(QCPAxis::atBottom), field->axis(QCPAxis::atLeft)})
      axis->setVisible(beam_ != nullptr);
  scale_->setVisible(beam_ != nullptr);
  if (!beam_) {
    map_->data()->clear();
    level_cut_->data()->clear();
    upright_cut_->data()->clear();
    key_->setText({});
    setReading(tr("The map is shown as soon as its first spots are worked out."));
    plot()->replot();
    return;
  }
  fill();
  if (!chosen_)
    place_ = {beam_->grid.azimuth_deg(beam_->peak_azimuth), beam_->grid.elevation_deg(beam_->peak_elevation)};
  fillCuts();
  if (!same_grid) frame(kWorthSeeing);
  setReading(wordsAt(place_.x(), place_.y()));
  plot()->replot(QCustomPlot::rpQueuedReplot);
}

void BeamPlot::fill() {
  const BeamGrid& grid = beam_->grid;
  QCPColorMapData* cells = map_->data();
  cells->setSize(grid.azimuths, grid.elevations);
  cells->setRange({grid.azimuth_from_deg, grid.azimuth_deg(grid.azimuths - 1)},
                  {grid.elevation_from_deg, grid.elevation_deg(grid.elevations - 1)});
  for (int k = 0; k < grid.elevations; ++k)
    for (int i = 0; i < grid.azimuths; ++i) cells->setCell(i, k, beam_->at(i, k));
  map_->setDataRange({0, std::max(beam_->peak_cd, 1e-9)});
  half_->setPieces(contour_of(*beam_, 0.5 * beam_->peak_cd));
  tenth_->setPieces(contour_of(*beam_, 0.1 * beam_->peak_cd));
}

void BeamPlot::fillCuts() {
  const BeamGrid& grid = beam_->grid;
  QVector<double> across;
  QVector<double> level;
  for (int i = 0; i < grid.azimuths; ++i) {
    across << grid.azimuth_deg(i);
    level << beam_->at_deg(grid.azimuth_deg(i), place_.y());
  }
  QVector<double> up;
  QVector<double> upright;
  for (int k = 0; k < grid.elevations; ++k) {
    up << grid.elevation_deg(k);
    upright << beam_->at_deg(place_.x(), grid.elevation_deg(k));
  }
  level_cut_->setData(across, level, true);
  upright_cut_->setData(upright, up);
  const double head = 1.06 * std::max(beam_->peak_cd, 1e-9);
  level_field_->axis(QCPAxis::atLeft)->setRange(0, head);
  upright_field_->axis(QCPAxis::atBottom)->setRange(0, head);
  for (QCPItemStraightLine* line : across_) {
    line->point1->setCoords(0, place_.y());
    line->point2->setCoords(1, place_.y());
  }
  for (QCPItemStraightLine* line : upright_) {
    line->point1->setCoords(place_.x(), 0);
    line->point2->setCoords(place_.x(), 1);
  }
  key_->setText(tr("Solid: half of the peak\nDotted: a tenth of it\nDashed: the cuts, at\n%1 across,\n%2 up")
                    .arg(degrees_text(place_.x()), degrees_text(place_.y())));
}

/// Shows the part of the map that holds more than this share of the peak, with a little round it.
void BeamPlot::frame(double least_share) {
  const BeamGrid& grid = beam_->grid;
  int left = grid.azimuths, right = -1, low = grid.elevations, high = -1;
  for (int k = 0; k < grid.elevations; ++k)
    for (int i = 0; i < grid.azimuths; ++i) {
      if (beam_->at(i, k) < least_share * beam_->peak_cd) continue;
      left = std::min(left, i);
      right = std::max(right, i);
      low = std::min(low, k);
      high = std::max(high, k);
    }
  if (right < left || high < low) return;
  const auto reach = [](int a, int b, int count) {
    const int room = std::max(2, (b - a) / 5);
    return std::pair(std::max(a - room, 0), std::min(b + room, count - 1));
  };
  const auto [x0, x1] = reach(left, right, grid.azimuths);
  const auto [y0, y1] = reach(low, high, grid.elevations);
  map_field_->axis(QCPAxis::atBottom)->setRange(grid.azimuth_deg(x0), grid.azimuth_deg(x1));
  map_field_->axis(QCPAxis::atLeft)->setRange(grid.elevation_deg(y0), grid.elevation_deg(y1));
}

QString BeamPlot::wordsAt(double azimuth_deg, double elevation_deg) const {
  return tr("azimuth %1, elevation %2: %3")
      .arg(degrees_text(azimuth_deg), degrees_text(elevation_deg),
           candela_text(beam_->at_deg(azimuth_deg, elevation_deg)));
}

bool BeamPlot::placeAt(const QPointF& pixel, QPointF& place) const {
  if (!beam_) return false;
  QCPAxisRect* field = plot()->axisRectAt(pixel);
  if (!field || !field->rect().contains(pixel.toPoint())) return false;
  place = place_;
  if (field == map_field_ || field == level_field_)
    place.setX(field->axis(QCPAxis::atBottom)->pixelToCoord(pixel.x()));
  if (field == map_field_ || field == upright_field_)
    place.setY(field->axis(QCPAxis::atLeft)->pixelToCoord(pixel.y()));
  return true;
}

QPointF BeamPlot::pixelOf(double azimuth_deg, double elevation_deg) const {
  return {map_field_->axis(QCPAxis::atBottom)->coordToPixel(azimuth_deg),
          map_field_->axis(QCPAxis::atLeft)->coordToPixel(elevation_deg)};
}

void BeamPlot::pointAt(const QPointF& pixel) {
  QPointF at;
  if (placeAt(pixel, at)) setReading(wordsAt(at.x(), at.y()));
}

void BeamPlot::click(const QPointF& pixel) {
  QPointF at;
  if (placeAt(pixel, at)) readAt(at.x(), at.y());
}

void BeamPlot::readAt(double azimuth_deg, double elevation_deg) {
  if (!beam_) return;
  const BeamGrid& grid = beam_->grid;
  chosen_ = true;
  place_ = {std::clamp(azimuth_deg, grid.azimuth_from_deg, grid.azimuth_deg(grid.azimuths - 1)),
            std::clamp(elevation_deg, grid.elevation_from_deg, grid.elevation_deg(grid.elevations - 1))};
  fillCuts();
  setReading(wordsAt(place_.x(), place_.y()));
  plot()->replot(QCustomPlot::rpQueuedReplot);
}

/// From one direction of the grid to the next.
void BeamPlot::step(int across, int up) {
  if (!beam_) return;
  const BeamGrid& grid = beam_->grid;
  const double i = std::round((place_.x() - grid.azimuth_from_deg) / grid.azimuth_step_deg) + across;
  const double k = std::round((place_.y() - grid.elevation_from_deg) / grid.elevation_step_deg) + up;
  readAt(grid.azimuth_from_deg + i * grid.azimuth_step_deg,
         grid.elevation_from_deg + k * grid.elevation_step_deg);
}

void BeamPlot::showAll() {
  if (!beam_) return;
  frame(0);
  plot()->replot();
}

PlotNumbers BeamPlot::numbers() const {
  PlotNumbers numbers{{"azimuth_deg", "elevation_deg", "intensity_cd"}, {}};
  if (!beam_) return numbers;
  // The same numbers as in the batch program's table, read line by line.
  QStringList lines = QString::fromStdString(beam_csv(*beam_)).split(QLatin1Char('\n'), Qt::SkipEmptyParts);
  numbers.heads = lines.takeFirst().split(QLatin1Char(','));
  for (const QString& line : lines) numbers.rows.push_back(line.split(QLatin1Char(',')));
  return numbers;
}

}  // namespace prismwright
