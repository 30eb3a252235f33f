#include "core/works/cutting_planes.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "core/base/angle.h"
#include "core/works/congruence.h"

namespace prismwright {
namespace {

using Plane = TurnedSolid::Plane;

/// The plane n . p >= d as the turning line sees it; the normal in the panel's frame.
Plane seen_from_line(const PlannedPrism& prism, double nx, double ny, double nz, double distance_mm) {
  double along = nz;
  double zero = nx;
  double quarter = ny;
  if (prism.turning == TurningAxis::panel) {
    const double dip = radians(prism.axis_dip_deg);
    along = nx * std::cos(dip) - nz * std::sin(dip);
    zero = nx * std::sin(dip) + nz * std::cos(dip);
    quarter = -ny;
  }
  return {along, std::hypot(zero, quarter), std::atan2(quarter, zero), distance_mm};
}

/// The two side planes (one, where a panel of 180 degrees has both in one), the flat inner face, the level cut.
std::vector<Plane> all_planes(const PlannedPrism& prism) {
  const Trim& trim = prism.trim;
  const double a = radians(trim.clockwise_side_deg);
  const double b = radians(trim.anticlockwise_side_deg);
  std::vector<Plane> planes = {seen_from_line(prism, -std::sin(a), std::cos(a), 0, trim.set_back_mm)};
  if (b - a <= kPi - 1e-9)
    planes.push_back(seen_from_line(prism, std::sin(b), -std::cos(b), 0, trim.set_back_mm));
  if (prism.turning == TurningAxis::lens) {
    if (trim.flat_inner_mm) planes.push_back(seen_from_line(prism, 1, 0, 0, *trim.flat_inner_mm));
  } else if (trim.half != Half::whole) {
    // A half is cut square to the plane of its section, through the turning line.
    planes.push_back({0, 1, trim.half == Half::upper ? 0 : kPi, trim.half_gap_mm});
  }
  return planes;
}

/// Room in front of a plane on the circle through a place of the outline, at an angle of the circle, mm.
double room(const Plane& plane, TurnPoint p, double angle) {
  return plane.along * p.along + plane.across * p.off * std::cos(angle - plane.angle) - plane.distance_mm;
}

/// How deep one plane cuts what the others leave of the ring. A linear measure is greatest at the outline's
/// circles: at the angle that faces the plane, or where another plane ends what is left.
class CutDepth {
 public:
  CutDepth(const std::vector<Plane>& planes, std::size_t own) : planes_(planes), own_(own) {}

  [[nodiscard]] double at(TurnPoint p) const {
    double depth = -std::numeric_limits<double>::infinity();
    const auto look = [&](double angle) {
      if (is_left(p, angle)) depth = std::max(depth, -room(planes_[own_], p, angle));
    };
    look(planes_[own_].angle + kPi);
    for (std::size_t i = 0; i < planes_.size(); ++i) {
      if (i == own_ || planes_[i].across * p.off < 1e-12) continue;
      const Plane& plane = planes_[i];
      const double share = (plane.distance_mm - plane.along * p.along) / (plane.across * p.off);
      if (std::abs(share) > 1) continue;
      look(plane.angle + std::acos(share));
      look(plane.angle - std::acos(share));
    }
    return depth;
  }

 private:
  [[nodiscard]] bool is_left(TurnPoint p, double angle) const {
    constexpr double kOn_mm = 1e-9;
    for (std::size_t i = 0; i < planes_.size(); ++i) {
      if (i != own_ && room(planes_[i], p, angle) < -kOn_mm) return false;
    }
    return true;
  }

  const std::vector<Plane>& planes_;
  std::size_t own_;
};

std::vector<TurnPoint> dense_outline(const PlannedPrism& prism, double chord_mm) {
  constexpr double kLongest_mm = 1;
  const auto corners = polygon_of(upper_profile(prism), chord_mm);
  std::vector<TurnPoint> outline;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const SectionPoint from = corners[i];
    const SectionPoint to = corners[(i + 1) % corners.size()];
    const int pieces = std::max(1, static_cast<int>(std::ceil(distance(from, to) / kLongest_mm)));
    for (int k = 0; k < pieces; ++k)
      outline.push_back(turned(between(from, to, static_cast<double>(k) / pieces), prism.turning));
  }
  return outline;
}

double deepest(const CutDepth& depth, const std::vector<TurnPoint>& outline, double enough_mm) {
  double most = -std::numeric_limits<double>::infinity();
  for (const TurnPoint p : outline) {
    most = std::max(most, depth.at(p));
    if (most > enough_mm) break;
  }
  return most;
}

}  // namespace

Profile upper_profile(const PlannedPrism& prism) {
  if (prism.turning == TurningAxis::lens) return prism.profile;
  const bool below = std::any_of(prism.profile.faces.begin(), prism.profile.faces.end(), [](const Face& face) {
    return std::any_of(face.points.begin(), face.points.end(), [](SectionPoint p) { return p.z < -1e-9; });
  });
  return below ? mirrored(prism.profile) : prism.profile;
}

std::vector<Plane> cutting_planes(const PlannedPrism& prism) {
  constexpr double kCoarse_mm = 0.02;
  constexpr double kFine_mm = 1e-6;
  std::vector<Plane> planes = all_planes(prism);
  const auto coarse = dense_outline(prism, kCoarse_mm);
  for (std::size_t own = 0; own < planes.size();) {
    const CutDepth depth(planes, own);
    double deep = deepest(depth, coarse, kCongruent_mm);
    // Near a touch the coarse outline cannot tell.
    if (deep <= kCongruent_mm && deep > -5 * kCoarse_mm)
      deep = deepest(depth, dense_outline(prism, kFine_mm), kCongruent_mm);
    if (deep > kCongruent_mm) {
      ++own;
    } else {
      planes.erase(planes.begin() + static_cast<std::ptrdiff_t>(own));
    }
  }
  return planes;
}

}  // namespace prismwright
