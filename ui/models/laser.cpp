#include "ui/models/laser.h"

#include <algorithm>

namespace prismwright {
namespace {
// Two stops closer than this are one: a step must always move the laser.
constexpr double kSameStop_deg = 1e-6;
}  // namespace

Laser::Laser(Workbench* bench, QObject* parent) : QObject(parent), bench_(bench) {
  connect(bench, &Workbench::bookChanged, this, &Laser::restart);
  connect(bench, &Workbench::sectionChanged, this, &Laser::retrace);
  restart();
}

QString Laser::zone() const { return path_ ? QString::fromStdString(path_->zone) : QString(); }

std::optional<BoardSpot> Laser::spot() const { return path_ ? spot_on_board(*path_, board_mm_) : std::nullopt; }

void Laser::point(double elevation_deg) {
  elevation_deg_ = std::clamp(elevation_deg, -90.0, 90.0);
  retrace();
}

void Laser::stepZone(int up) {
  if (!bench_->plan()) return;
  const std::vector<double> stops = zone_middles_deg(bench_->plan()->section);
  if (up > 0) {
    const auto next = std::upper_bound(stops.begin(), stops.end(), elevation_deg_ + kSameStop_deg);
    if (next != stops.end()) point(*next);
  } else {
    const auto next = std::lower_bound(stops.begin(), stops.end(), elevation_deg_ - kSameStop_deg);
    if (next != stops.begin()) point(*std::prev(next));
  }
}

void Laser::pointAtZone(const QString& zone) {
  const Zone* found = bench_->plan() ? bench_->plan()->section.find(zone.toStdString()) : nullptr;
  if (found) point(middle_deg(*found));
}

void Laser::setBoard(double board_mm) {
  board_mm_ = board_mm;
  emit moved();
}

void Laser::restart() {
  elevation_deg_ = 0;
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
  if (const SectionTracer* tracer = bench_->tracer()) path_ = tracer->trace(elevation_deg_);
  emit moved();
}

}  // namespace prismwright
