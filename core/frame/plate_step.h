#pragma once

#include <cmath>

#include "core/frame/plate_chain.h"

namespace prismwright {

/// A displacement or a direction in a plate.
struct PlateVector {
  double u = 0;
  double v = 0;
};
inline PlateVector operator-(PlatePoint a, PlatePoint b) { return {a.u - b.u, a.v - b.v}; }
inline PlatePoint operator+(PlatePoint p, PlateVector w) { return {p.u + w.u, p.v + w.v}; }
inline PlateVector operator+(PlateVector a, PlateVector b) { return {a.u + b.u, a.v + b.v}; }
inline PlateVector operator-(PlateVector w) { return {-w.u, -w.v}; }
inline PlateVector operator*(double k, PlateVector w) { return {k * w.u, k * w.v}; }
inline double dot(PlateVector a, PlateVector b) { return a.u * b.u + a.v * b.v; }
inline double cross(PlateVector a, PlateVector b) { return a.u * b.v - a.v * b.u; }
inline double length_of(PlateVector w) { return std::sqrt(dot(w, w)); }  // plates are far from overflow
inline double distance(PlatePoint a, PlatePoint b) { return length_of(a - b); }
inline PlateVector quarter_turn(PlateVector w) { return {-w.v, w.u}; }
/// Angle from one direction to another, radians, anticlockwise positive, within half a turn.
inline double turn_between(PlateVector from, PlateVector to) {
  return std::atan2(cross(from, to), dot(from, to));
}
inline PlateVector turned(PlateVector w, double by_rad) {
  const double c = std::cos(by_rad);
  const double s = std::sin(by_rad);
  return {c * w.u - s * w.v, s * w.u + c * w.v};
}
/// Blank vectors stay blank.
PlateVector unit(PlateVector w);

PlateStep straight_step(PlatePoint from, PlatePoint to);
/// Flatter arcs are straight lines: two metres of one rise by 0.005 mm, and rounding would move its ends.
inline constexpr double kMostRadius_mm = 1e8;
/// The arc through both ends whose chord it leaves by `turn` radians in all (a straight line where it leaves
/// the chord by less than a nanometre, or its radius exceeds kMostRadius_mm).
PlateStep arc_step(PlatePoint from, PlatePoint to, double turn);

/// Unit directions of travel.
PlateVector heading_at_start(const PlateStep& step);
PlateVector heading_at_end(const PlateStep& step);
/// The place a share (0 to 1) of the way along the step.
PlatePoint place_along(const PlateStep& step, double share);
double distance_to(const PlateStep& step, PlatePoint place);
double length_mm(const PlateStep& step);
/// The part of the way between two shares of it.
PlateStep part_of(const PlateStep& step, double from, double to);
/// The same way walked back.
PlateStep reversed(const PlateStep& step);

}  // namespace prismwright
