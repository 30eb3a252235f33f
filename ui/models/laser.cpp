#include "ui/models/laser.h"

#include <algorithm>
#include <cmath>

namespace prismwright {
namespace {

// Two stops of a band closer than this are one: a step must always move the laser.
constexpr double kSameStop_deg = 1e-6;
// A focal point closer to the principal one than this is that one.
constexpr double kSameFocus_mm = 1e-6;

/// Bands in the order of laser_stops.
int rank_of(Band band) { return band == Band::lower ? 0 : band == Band::refracting ? 1 : 2; }

}  // namespace

Laser::Laser(Workbench* bench, QObject* parent) : QObject(parent), bench_(bench) {
  connect(bench, &Workbench::bookChanged, this, &Laser::restart);
  connect(bench, &Workbench::sectionChanged, this, &Laser::retrace);
  restart();
}

QString Laser::zone() const { return path_ ? QString::fromStdString(path_->zone) : QString(); }

std::optional<BoardSpot> Laser::spot() const { return path_ ? spot_on_board(*path_, board_mm_) : std::nullopt; }

double Laser::source_z_mm() const { return path_ && !path_->points.empty() ? path_->points.front().z : 0; }

std::optional<Band> Laser::bandOfRay() const {
  if (band_ || !bench_->plan()) return band_;
  if (path_)
    if (const Zone* zone = bench_->plan()->section.find(path_->zone)) return band_of(zone->kind);
  return std::nullopt;
}

std::optional<Band> Laser::ownFocus() const {
  if (!path_ || std::abs(source_z_mm()) < kSameFocus_mm) return std::nullopt;
  if (const auto band = bandOfRay()) return band;
  // A ray that meets no prism still starts from the focal point of a band.
  for (const Band band : {Band::refracting, Band::upper, Band::lower})
    if (std::abs(band_aim(bench_->plan()->section.input, band).focus_z_mm - source_z_mm()) < kSameFocus_mm)
      return band;
  return std::nullopt;
}

void Laser::point(double elevation_deg) {
  band_.reset();
  elevation_deg_ = std::clamp(elevation_deg, -90.0, 90.0);
  retrace();
}

void Laser::stopAt(const LaserStop& stop) {
  band_ = stop.band;
  elevation_deg_ = stop.elevation_deg;
  retrace();
}

void Laser::stepZone(int up) {
  if (!bench_->plan()) return;
  const std::vector<LaserStop> stops = laser_stops(bench_->plan()->section);
  const auto passed = [&, band = bandOfRay()](const LaserStop& stop) {
    // A ray that meets no prism belongs to no band: then the elevation alone tells what lies below it.
    const bool same = !band || stop.band == *band;
    const double beyond = up > 0 ? kSameStop_deg : -kSameStop_deg;
    if (same) return stop.elevation_deg <= elevation_deg_ + beyond;
    return rank_of(stop.band) < rank_of(*band);
  };
  if (up > 0) {
    const auto next = std::find_if_not(stops.begin(), stops.end(), passed);
    if (next != stops.end()) stopAt(*next);
  } else {
    const auto next = std::find_if(stops.rbegin(), stops.rend(), passed);
    if (next != stops.rend()) stopAt(*next);
  }
}

void Laser::pointAtZone(const QString& zone) {
  const Zone* found = bench_->plan() ? bench_->plan()->section.find(zone.toStdString()) : nullptr;
  if (found) stopAt({found->mark, band_of(found->kind), middle_deg(*found)});
}

void Laser::setBoard(double board_mm) {
  board_mm_ = board_mm;
  emit moved();
}

void Laser::restart() {
  elevation_deg_ = 0;
  band_.reset();
  if (!bench_->plan()) {
    retrace();
    return;
  }
  // A ray through the middle of the first zone above the focal plane shows more than one along the axis.
  board_mm_ = std::max(1000.0, 4 * bench_->plan()->section.input.focal_mm);
  retrace();
  stepZone(1);
}

void Laser::retrace() {
  path_.reset();
  if (const SectionTracer* tracer = bench_->tracer())
    path_ = band_ ? tracer->trace(elevation_deg_, *band_) : tracer->trace(elevation_deg_);
  emit moved();
}

}  // namespace prismwright
