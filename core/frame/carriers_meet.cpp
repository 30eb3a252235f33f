#include "core/frame/carriers_meet.h"

#include <cmath>
#include <utility>

namespace prismwright {

std::vector<PlatePoint> carriers_meet(PlateStep a, PlateStep b) {
  constexpr double kLeastTurn_rad = 1e-5;
  if (b.straight()) std::swap(a, b);
  if (b.straight()) {
    const PlateVector u = a.to - a.from;
    const PlateVector w = b.to - b.from;
    const double area = cross(u, w);
    if (std::abs(area) < kLeastTurn_rad * length_of(u) * length_of(w)) return {};
    return {a.from + cross(b.from - a.from, w) / area * u};
  }
  // In b's own frame: the foot of its centre on the line, or on the line through both meetings of two circles.
  PlateVector along;
  PlatePoint foot;
  if (a.straight()) {
    along = unit(a.to - a.from);
    foot = a.from + dot(b.centre - a.from, along) * along;
  } else {
    const PlateVector between = a.centre - b.centre;
    const double apart = length_of(between);
    if (apart == 0) return {};
    const double on = (apart * apart + b.radius_mm * b.radius_mm - a.radius_mm * a.radius_mm) / (2 * apart);
    foot = b.centre + on / apart * between;
    along = quarter_turn(unit(between));
  }
  const PlateVector off = foot - b.centre;
  const double square = b.radius_mm * b.radius_mm - dot(off, off);
  if (square < 0) return {};
  return {foot + std::sqrt(square) * along, foot + -std::sqrt(square) * along};
}

}  // namespace prismwright
