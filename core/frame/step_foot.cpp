#include "core/frame/step_foot.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "core/frame/plate_step.h"

namespace prismwright {
namespace {

constexpr double kHalfTurn = std::numbers::pi;

StepFoot foot_on_line(const PlateStep& step, PlatePoint p) {
  const double du = step.to.u - step.from.u;
  const double dv = step.to.v - step.from.v;
  const double length2 = du * du + dv * dv;
  if (length2 == 0) return {step.from, 0};
  const double share = ((p.u - step.from.u) * du + (p.v - step.from.v) * dv) / length2;
  if (share <= 0) return {step.from, 0};
  if (share >= 1) return {step.to, 0};
  return {{step.from.u + share * du, step.from.v + share * dv},
          std::min(share, 1 - share) * std::sqrt(length2)};
}

// Across the radius to a point of the circle, positive in the arc's own direction, times the radius.
double past_radius(const PlateStep& arc, PlatePoint on_circle, PlatePoint p) {
  const double cross =
      (on_circle.u - arc.centre.u) * (p.v - arc.centre.v) - (on_circle.v - arc.centre.v) * (p.u - arc.centre.u);
  return arc.turn > 0 ? cross : -cross;
}

StepFoot foot_on_arc(const PlateStep& arc, PlatePoint p) {
  const double away = distance(p, arc.centre);
  if (away == 0) return {arc.from, 0};
  if (!bears_on(arc, p)) {
    return {distance(p, arc.from) <= distance(p, arc.to) ? arc.from : arc.to, 0};
  }
  const double scale = arc.radius_mm / away;
  // Across the nearer end's radius is no more than along the arc.
  const double off = std::min(std::abs(past_radius(arc, arc.from, p)), std::abs(past_radius(arc, arc.to, p)));
  return {{arc.centre.u + (p.u - arc.centre.u) * scale, arc.centre.v + (p.v - arc.centre.v) * scale},
          off / away};
}

int crossings_of_line(PlatePoint from, PlatePoint to, PlatePoint p) {
  if ((from.v <= p.v) == (to.v <= p.v)) return 0;
  return from.u + (p.v - from.v) / (to.v - from.v) * (to.u - from.u) > p.u ? 1 : 0;
}

// Crossings of the chord, and one more where the place lies between chord and arc. Both are told by the same
// look at which side of the chord the place lies on, so that they agree for a place right on it.
int crossings_of_arc(const PlateStep& arc, PlatePoint p) {
  const double side =
      (arc.to.u - arc.from.u) * (p.v - arc.from.v) - (arc.to.v - arc.from.v) * (p.u - arc.from.u);
  // An arc that turns left lies to the right of its chord, however far it turns.
  const bool beside_arc = arc.turn > 0 ? side < 0 : side > 0;
  const bool straddles = (arc.from.v <= p.v) != (arc.to.v <= p.v);
  const bool arc_lies_before = (arc.to.v > arc.from.v) == (arc.turn < 0);
  const int chord = straddles && beside_arc == arc_lies_before ? 1 : 0;
  return chord + (beside_arc && distance(p, arc.centre) < arc.radius_mm ? 1 : 0);
}

}  // namespace

double along_arc(const PlateStep& arc, PlatePoint p) {
  const double start = std::atan2(arc.from.v - arc.centre.v, arc.from.u - arc.centre.u);
  const double here = std::atan2(p.v - arc.centre.v, p.u - arc.centre.u);
  double angle = arc.turn > 0 ? here - start : start - here;
  while (angle < 0) angle += 2 * kHalfTurn;
  return angle;
}

bool bears_on(const PlateStep& arc, PlatePoint p) {
  const double past_start = past_radius(arc, arc.from, p);
  const double past_end = past_radius(arc, arc.to, p);
  return std::abs(arc.turn) <= kHalfTurn ? past_start >= 0 && past_end <= 0 : past_start >= 0 || past_end <= 0;
}

StepFoot foot_on(const PlateStep& step, PlatePoint p) {
  return step.straight() ? foot_on_line(step, p) : foot_on_arc(step, p);
}

PlateExtent extent_of(const PlateStep& step) {
  PlateExtent box{{std::min(step.from.u, step.to.u), std::min(step.from.v, step.to.v)},
                  {std::max(step.from.u, step.to.u), std::max(step.from.v, step.to.v)}};
  if (step.straight()) return box;
  for (const auto& [u, v] : {std::pair(1, 0), {0, 1}, {-1, 0}, {0, -1}}) {
    const PlatePoint far{step.centre.u + u * step.radius_mm, step.centre.v + v * step.radius_mm};
    if (along_arc(step, far) > std::abs(step.turn)) continue;
    box.low = {std::min(box.low.u, far.u), std::min(box.low.v, far.v)};
    box.high = {std::max(box.high.u, far.u), std::max(box.high.v, far.v)};
  }
  return box;
}

int crossings_of(const PlateStep& step, PlatePoint p) {
  return step.straight() ? crossings_of_line(step.from, step.to, p) : crossings_of_arc(step, p);
}

}  // namespace prismwright
