#include "core/frame/plate_step.h"

#include <algorithm>

namespace prismwright {
namespace {

constexpr double kFlat_mm = 1e-6;

}  // namespace

PlateVector unit(PlateVector w) {
  const double length = length_of(w);
  return length > 0 ? (1 / length) * w : w;
}

PlateStep straight_step(PlatePoint from, PlatePoint to) { return {from, to, 0, {}, 0}; }

PlateStep arc_step(PlatePoint from, PlatePoint to, double turn) {
  const PlateVector chord = to - from;
  const double half = length_of(chord) / 2;
  if (std::abs(half * std::tan(turn / 4)) < kFlat_mm) return straight_step(from, to);
  const double radius = half / std::abs(std::sin(turn / 2));
  if (radius > kMostRadius_mm) return straight_step(from, to);
  // The centre stands to the left of the chord when the arc turns left by less than half a turn.
  const double away = half / std::tan(turn / 2);
  const PlatePoint middle = from + 0.5 * chord;
  return {from, to, turn, middle + away * quarter_turn(unit(chord)), radius};
}

PlateVector heading_at_start(const PlateStep& step) {
  return turned(unit(step.to - step.from), -step.turn / 2);
}

PlateVector heading_at_end(const PlateStep& step) { return turned(unit(step.to - step.from), step.turn / 2); }

PlatePoint place_along(const PlateStep& step, double share) {
  if (share <= 0) return step.from;
  if (share >= 1) return step.to;
  if (step.straight()) return step.from + share * (step.to - step.from);
  return step.centre + turned(step.from - step.centre, share * step.turn);
}

double distance_to(const PlateStep& step, PlatePoint place) {
  if (step.straight()) {
    const PlateVector chord = step.to - step.from;
    const double square = dot(chord, chord);
    const double share = square > 0 ? std::clamp(dot(place - step.from, chord) / square, 0.0, 1.0) : 0;
    return distance(place, step.from + share * chord);
  }
  // Within the arc's sector: the angle from its middle spoke is at most half of its turn.
  const PlateVector middle = turned(step.from - step.centre, step.turn / 2);
  const PlateVector spoke = place - step.centre;
  if (std::abs(turn_between(middle, spoke)) <= std::abs(step.turn) / 2) {
    return std::abs(length_of(spoke) - step.radius_mm);
  }
  return std::min(distance(place, step.from), distance(place, step.to));
}

double length_mm(const PlateStep& step) {
  return step.straight() ? distance(step.from, step.to) : step.radius_mm * std::abs(step.turn);
}

PlateStep part_of(const PlateStep& step, double from, double to) {
  PlateStep part = step;
  part.from = place_along(step, from);
  part.to = place_along(step, to);
  part.turn = step.turn * (to - from);
  return part;
}

PlateStep reversed(const PlateStep& step) {
  return {step.to, step.from, step.straight() ? 0 : -step.turn, step.centre, step.radius_mm};
}

}  // namespace prismwright
