#include "core/light/signal_regions.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace prismwright {

namespace {

constexpr std::string_view kCollisions = "COLREG 1972 Annex I 7";

double distance_to_side(const Chromaticity& p, const Chromaticity& a, const Chromaticity& b) {
  const double along_x = b.x - a.x;
  const double along_y = b.y - a.y;
  const double share =
      ((p.x - a.x) * along_x + (p.y - a.y) * along_y) / (along_x * along_x + along_y * along_y);
  const double t = std::clamp(share, 0.0, 1.0);
  return std::hypot(p.x - a.x - t * along_x, p.y - a.y - t * along_y);
}

/// Whether a level line from p to the right crosses the side.
bool crosses_right(const Chromaticity& p, const Chromaticity& a, const Chromaticity& b) {
  if ((a.y > p.y) == (b.y > p.y)) return false;
  return p.x < a.x + (p.y - a.y) * (b.x - a.x) / (b.y - a.y);
}

/// Twice the area of a, b, c: positive when they turn left.
double turn(const Chromaticity& a, const Chromaticity& b, const Chromaticity& c) {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

bool sides_meet(const Chromaticity& a, const Chromaticity& b, const Chromaticity& c, const Chromaticity& d) {
  return turn(a, b, c) * turn(a, b, d) <= 0 && turn(c, d, a) * turn(c, d, b) <= 0;
}

}  // namespace

const std::vector<SignalRegion>& signal_regions() {
  static const std::vector<SignalRegion> regions = {
      {"white",
       kAidsToNavigation,
       {{.500, .382}, {.440, .382}, {.285, .264}, {.285, .332}, {.453, .440}, {.500, .440}}},
      {"green", kAidsToNavigation, {{.305, .689}, {.321, .494}, {.228, .351}, {.028, .385}}},
      {"red", kAidsToNavigation, {{.735, .265}, {.721, .259}, {.645, .335}, {.665, .335}}},
      {"yellow", kAidsToNavigation, {{.618, .382}, {.612, .382}, {.555, .435}, {.560, .440}}},
      {"red", kCollisions, {{.680, .320}, {.735, .265}, {.721, .259}, {.660, .320}}},
  };
  return regions;
}

double region_margin(const SignalRegion& region, const Chromaticity& at) {
  const auto& corners = region.corners;
  double nearest = std::numeric_limits<double>::infinity();
  bool inside = false;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Chromaticity& a = corners[i];
    const Chromaticity& b = corners[(i + 1) % corners.size()];
    nearest = std::min(nearest, distance_to_side(at, a, b));
    if (crosses_right(at, a, b)) inside = !inside;
  }
  return inside ? nearest : -nearest;
}

bool holds(const SignalRegion& region, const Chromaticity& at) {
  return region_margin(region, at) >= -kRegionRounding;
}

bool crosses_itself(const std::vector<Chromaticity>& corners) {
  const std::size_t count = corners.size();
  for (std::size_t i = 0; i < count; ++i) {
    for (std::size_t j = i + 2; j < count; ++j) {
      if (i == 0 && j + 1 == count) continue;  // neighbours round the end
      if (sides_meet(corners[i], corners[i + 1], corners[j], corners[(j + 1) % count])) return true;
    }
  }
  return false;
}

}  // namespace prismwright
