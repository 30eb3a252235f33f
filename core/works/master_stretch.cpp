#include "core/works/master_stretch.h"

#include <cmath>

#include "core/base/angle.h"

namespace prismwright {

namespace {

double factor(double percent) { return 1 / (1 - percent / 100); }

SpacePoint stretched(const SpaceFrame& frame, SpacePoint p, double first, double second, double third) {
  const SpacePoint own = frame.into(p);
  return frame.out_of(SpacePoint{first * own.x, second * own.y, third * own.z});
}

}  // namespace

bool MasterStretch::is_even() const {
  return std::abs(depth - length) < 1e-12 && std::abs(depth - height) < 1e-12;
}

SpaceFrame MasterStretch::frame() const {
  const double turn = radians(turned_deg);
  return {{0, 0, 0}, {std::cos(turn), std::sin(turn), 0}, {-std::sin(turn), std::cos(turn), 0}, {0, 0, 1}};
}

SpacePoint MasterStretch::of_master(SpacePoint casting) const {
  return stretched(frame(), casting, depth, length, height);
}

SpacePoint MasterStretch::of_casting(SpacePoint master) const {
  return stretched(frame(), master, 1 / depth, 1 / length, 1 / height);
}

MasterStretch master_stretch(const PlannedPrism& prism, const WorksSettings& settings) {
  MasterStretch stretch;
  if (prism.turning == TurningAxis::lens) {
    stretch.turned_deg = (prism.trim.clockwise_side_deg + prism.trim.anticlockwise_side_deg) / 2;
  }
  stretch.depth = factor(settings.shrink_depth_percent);
  stretch.length = factor(settings.shrink_length_percent);
  stretch.height = factor(settings.shrink_height_percent);
  return stretch;
}

}  // namespace prismwright
