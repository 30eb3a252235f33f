#include "core/frame/step_gap.h"

#include <cmath>
#include <limits>
#include <optional>

#include "core/frame/step_foot.h"

#include "core/frame/plate_step.h"

namespace prismwright {
namespace {

double cross(PlatePoint a, PlatePoint b) { return a.u * b.v - a.v * b.u; }
PlatePoint minus(PlatePoint a, PlatePoint b) { return {a.u - b.u, a.v - b.v}; }
PlatePoint shifted(PlatePoint p, double length, PlatePoint along) {
  return {p.u + length * along.u, p.v + length * along.v};
}

// Keeps the nearest of the places that are offered.
class Nearest {
 public:
  void take(PlatePoint first, PlatePoint second) {
    const double gap = distance(first, second);
    if (gap < best_.gap_mm) best_ = {gap, first, second};
  }
  void meet(PlatePoint place) { best_ = {0, place, place}; }
  [[nodiscard]] const StepGap& best() const { return best_; }

 private:
  StepGap best_{std::numeric_limits<double>::max(), {}, {}};
};

std::optional<PlatePoint> crossing(const PlateStep& a, const PlateStep& b) {
  const PlatePoint along_a = minus(a.to, a.from);
  const PlatePoint along_b = minus(b.to, b.from);
  const double turn = cross(along_a, along_b);
  if (turn == 0) return std::nullopt;
  const PlatePoint between = minus(b.from, a.from);
  const double share_a = cross(between, along_b) / turn;
  const double share_b = cross(between, along_a) / turn;
  if (share_a < 0 || share_a > 1 || share_b < 0 || share_b > 1) return std::nullopt;
  return shifted(a.from, share_a, along_a);
}

// Both places at which a circle meets a line, or the nearest of the two to each other.
void line_and_arc(const PlateStep& line, const PlateStep& arc, bool swapped, Nearest& nearest) {
  const PlatePoint along = minus(line.to, line.from);
  const double length = distance(line.from, line.to);
  if (length == 0) return;
  const PlatePoint unit{along.u / length, along.v / length};
  const PlatePoint to_centre = minus(arc.centre, line.from);
  const double at = to_centre.u * unit.u + to_centre.v * unit.v;
  const double aside = cross(unit, to_centre);
  const double half2 = arc.radius_mm * arc.radius_mm - aside * aside;
  if (half2 >= 0) {
    for (const double way : {at - std::sqrt(half2), at + std::sqrt(half2)}) {
      const PlatePoint p = shifted(line.from, way, unit);
      if (way >= 0 && way <= length && bears_on(arc, p)) nearest.meet(p);
    }
    return;
  }
  const PlatePoint foot = shifted(line.from, at, unit);
  if (at < 0 || at > length || !bears_on(arc, foot)) return;
  const PlatePoint on_arc = foot_on(arc, foot).place;
  swapped ? nearest.take(on_arc, foot) : nearest.take(foot, on_arc);
}

void two_arcs(const PlateStep& a, const PlateStep& b, Nearest& nearest) {
  const double apart = distance(a.centre, b.centre);
  if (apart == 0) return;  // an end of one is then as near as any other place
  const PlatePoint unit{(b.centre.u - a.centre.u) / apart, (b.centre.v - a.centre.v) / apart};
  for (const double side_a : {-a.radius_mm, a.radius_mm}) {
    const PlatePoint on_a = shifted(a.centre, side_a, unit);
    if (!bears_on(a, on_a)) continue;
    for (const double side_b : {-b.radius_mm, b.radius_mm}) {
      const PlatePoint on_b = shifted(b.centre, side_b, unit);
      if (bears_on(b, on_b)) nearest.take(on_a, on_b);
    }
  }
  const double at = (apart * apart + a.radius_mm * a.radius_mm - b.radius_mm * b.radius_mm) / (2 * apart);
  const double half2 = a.radius_mm * a.radius_mm - at * at;
  if (half2 < 0) return;
  const PlatePoint middle = shifted(a.centre, at, unit);
  for (const double half : {-std::sqrt(half2), std::sqrt(half2)}) {
    const PlatePoint p = shifted(middle, half, {-unit.v, unit.u});
    if (bears_on(a, p) && bears_on(b, p)) nearest.meet(p);
  }
}

}  // namespace

StepGap gap_of(const PlateStep& first, const PlateStep& second) {
  Nearest nearest;
  for (const PlatePoint end : {first.from, first.to}) nearest.take(end, foot_on(second, end).place);
  for (const PlatePoint end : {second.from, second.to}) nearest.take(foot_on(first, end).place, end);
  if (first.straight() && second.straight()) {
    if (const auto p = crossing(first, second)) nearest.meet(*p);
  } else if (first.straight()) {
    line_and_arc(first, second, false, nearest);
  } else if (second.straight()) {
    line_and_arc(second, first, true, nearest);
  } else {
    two_arcs(first, second, nearest);
  }
  return nearest.best();
}

}  // namespace prismwright
