#include "core/frame/stretch_fit.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"

namespace prismwright {
namespace {

constexpr double kMostKink_rad = radians(0.45);  // of one step against the course; two meet within a degree
constexpr double kMostTurn_rad = 1.2 * kPi;      // a circle is two half turns at least
constexpr double kUsedShare = 0.98;              // of the allowance: it is measured at places, not everywhere
constexpr double kLongEdge = 40;                 // in allowances: such an edge is watched at more places
constexpr double kOverLeast = 1.0002;            // rounding must not bring a radius under the least one
constexpr std::array<double, 4> kWatched{0.1, 0.25, 0.75, 0.9};

PlateStep touching_step(PlatePoint from, PlateVector heading, PlatePoint to) {
  return arc_step(from, to, 2 * turn_between(heading, to - from));
}

// One step of a fit, made ready for many distances.
class WatchedStep {
 public:
  explicit WatchedStep(const PlateStep& step) : step_(step) {
    if (step.straight()) {
      const PlateVector chord = step.to - step.from;
      along_ = unit(chord);
      length_mm_ = length_of(chord);
    } else {
      along_ = turned(unit(step.from - step.centre), step.turn / 2);
      length_mm_ = std::cos(step.turn / 2);
    }
  }

  [[nodiscard]] double distance_to(PlatePoint place) const {
    if (step_.straight()) {
      const PlateVector way = place - step_.from;
      const double share = dot(way, along_);
      if (length_mm_ > 0 && share >= 0 && share <= length_mm_) return std::abs(cross(along_, way));
    } else {
      const PlateVector spoke = place - step_.centre;
      const double length = std::sqrt(dot(spoke, spoke));
      if (dot(spoke, along_) >= length * length_mm_) return std::abs(length - step_.radius_mm);
    }
    return std::min(distance(place, step_.from), distance(place, step_.to));
  }

 private:
  PlateStep step_;
  PlateVector along_;  // unit: of the line, or the arc's middle spoke
  double length_mm_;   // of the line, or the cosine of half the arc's turn
};

// Whether places stand farther than the allowance from a fit.
class Watch {
 public:
  Watch(const Fit& fit, double within_mm)
      : first_(fit.steps[0]), second_(fit.steps[fit.count == 2 ? 1 : 0]), within_mm_(within_mm) {}

  [[nodiscard]] bool far(PlatePoint place, double spent_mm) const {
    const double left = within_mm_ - spent_mm;
    return first_.distance_to(place) > left && second_.distance_to(place) > left;
  }

  // The smooth curve stands 4 s (1 - s) of its greatest rise over the edge.
  [[nodiscard]] bool strays(const FitCourse& course, std::size_t k) const {
    const PlateVector edge = course.at(k + 1) - course.at(k);
    const PlateVector rise = course.over_edge(k) - (course.at(k) + 0.5 * edge);
    return std::any_of(kWatched.begin(), kWatched.end(),
                       [&](double s) { return far(course.at(k) + s * edge + 4 * s * (1 - s) * rise, 0); });
  }

 private:
  WatchedStep first_;
  WatchedStep second_;
  double within_mm_;
};

bool kinked(PlateVector a, PlateVector b) { return std::abs(turn_between(a, b)) > kMostKink_rad; }

}  // namespace

StretchFitter::StretchFitter(const FitCourse& course, const FitRules& rules)
    : course_(course), rules_(rules), within_mm_(kUsedShare * rules.within_mm) {}

std::optional<Fit> StretchFitter::single(std::size_t i, std::size_t j) const {
  const PlatePoint from = course_.at(i);
  const PlatePoint to = course_.at(j);
  if (distance(from, to) == 0) return std::nullopt;
  const Fit line{{straight_step(from, to), {}}, 1};
  if (holds(line, i, j)) return line;
  const double turn = allowed_turn(best_turn(i, j), distance(from, to));
  if (std::abs(turn) > kMostTurn_rad) return std::nullopt;
  const Fit arc{{arc_step(from, to, turn), {}}, 1};
  return holds(arc, i, j) ? std::optional(arc) : std::nullopt;
}

// An arc that would be a little too keen is made just flat enough.
double StretchFitter::allowed_turn(double turn, double chord_mm) const {
  const double least = turn > 0 ? rules_.least_left_radius_mm : rules_.least_right_radius_mm;
  const double sine = chord_mm / 2 / (kOverLeast * least);
  if (least <= 0 || std::abs(turn) >= kPi || sine >= 1) return turn;
  return std::copysign(std::min(std::abs(turn), 2 * std::asin(sine)), turn);
}

// A pair of arcs (either may be straight) between given headings T0, T1 with legs d0, d1, V the chord:
// V^2 - 2 d0 V T0 - 2 d1 V T1 - 2 d0 d1 (1 - T0 T1) = 0. Own derivation from |V - d0 T0 - d1 T1| = d0 + d1.
std::optional<Fit> StretchFitter::pair(std::size_t i, std::size_t j) const {
  const PlateVector chord = course_.at(j) - course_.at(i);
  const PlateVector t0 = course_.heading_out(i);
  const PlateVector t1 = course_.heading_in(j);
  const double square = dot(chord, chord);
  if (square == 0) return std::nullopt;
  const double along = dot(chord, t0) + dot(chord, t1);
  const double bend = 1 - dot(t0, t1);
  const double even = square / (along + std::sqrt(along * along + 2 * bend * square));
  std::array<double, 5> legs{even, 0, 0, even / 2, even * 1.5};
  // Where the headings' lines meet, a straight line may take the longer way before or after the arc.
  const double across = cross(t0, t1);
  if (std::abs(across) > 1e-9) {
    const double x = cross(chord, t1) / across;
    const double y = -cross(chord, t0) / across;
    if (x > 0 && y > 0) legs[1] = x > y ? (x - y) / 2 : x;
  }
  for (const double d0 : legs) {
    if (d0 <= 0) continue;
    const double d1 = (square - 2 * d0 * dot(chord, t0)) / (2 * dot(chord, t1) + 2 * d0 * bend);
    if (!(d1 > 0) || !std::isfinite(d1)) continue;
    const Fit fit = pair_with(i, j, d0, d1);
    if (holds(fit, i, j)) return fit;
  }
  return std::nullopt;
}

Fit StretchFitter::edge(std::size_t i) const {
  return {{straight_step(course_.at(i), course_.at(i + 1)), {}}, 1};
}

Fit StretchFitter::pair_with(std::size_t i, std::size_t j, double d0, double d1) const {
  const PlatePoint from = course_.at(i);
  const PlatePoint to = course_.at(j);
  const PlatePoint first = from + d0 * course_.heading_out(i);
  const PlatePoint second = to + -d1 * course_.heading_in(j);
  const PlatePoint joint = first + d0 / (d0 + d1) * (second - first);
  return {{touching_step(from, course_.heading_out(i), joint),
           reversed(touching_step(to, -course_.heading_in(j), joint))},
          2};
}

// The circle through both ends that lies best, by least squares, on what is between. In the chord's frame a
// place (x, y) of the circle with its centre at height c has q = x^2 + y^2 - half^2 = 2 c y.
double StretchFitter::best_turn(std::size_t i, std::size_t j) const {
  const PlatePoint from = course_.at(i);
  const PlateVector chord = course_.at(j) - from;
  const double half = length_of(chord) / 2;
  const PlateVector axis = unit(chord);
  double qq = 0, qy = 0, yy = 0, sum = 0, high = 0;
  const auto take = [&](PlatePoint p) {
    const double x = dot(p - from, axis) - half;
    const double y = cross(axis, p - from);
    const double q = x * x + y * y - half * half;
    qq += q * q, qy += q * y, yy += y * y, sum += y;
    high = std::max(high, std::abs(y));
  };
  const std::size_t step = std::max<std::size_t>(1, (j - i) / 64);
  for (std::size_t k = i; k < j; k += step) {
    if (k > i) take(course_.at(k));
    take(course_.over_edge(k));
  }
  if (qq == 0) return 0;
  const double hand = sum > 0 ? 1 : -1;  // to which side of the chord the arc bulges
  // Flat arcs: 1 / (2 c) is well known; deep ones: c itself.
  if (high < half / 2) {
    const double bulge = qy / qq;
    return bulge == 0 ? 0 : -hand * 2 * std::atan2(half, -hand / (2 * bulge));
  }
  return -hand * 2 * std::atan2(half, -hand * qy / (2 * yy));
}

bool StretchFitter::holds(const Fit& fit, std::size_t i, std::size_t j) const {
  const PlateStep& last = fit.steps[static_cast<std::size_t>(fit.count - 1)];
  if (!course_.corner(i) && kinked(heading_at_start(fit.steps[0]), course_.heading_out(i))) return false;
  if (!course_.corner(j) && kinked(heading_at_end(last), course_.heading_in(j))) return false;
  if (!may_turn(fit.steps[0]) || !may_turn(last)) return false;
  const Watch watch(fit, within_mm_);
  for (std::size_t k = i; k < j; ++k) {
    if (k > i && watch.far(course_.at(k), course_.spent_mm(k))) return false;
    const double spent = std::max(course_.spent_mm(k), course_.spent_mm(k + 1));
    if (watch.far(course_.over_edge(k), spent)) return false;
    if (course_.edge_mm(k) > kLongEdge * within_mm_ && watch.strays(course_, k)) return false;
  }
  return true;
}

bool StretchFitter::may_turn(const PlateStep& step) const {
  if (std::abs(step.turn) > kMostTurn_rad) return false;
  const double least = step.turn > 0 ? rules_.least_left_radius_mm : rules_.least_right_radius_mm;
  return step.straight() || step.radius_mm >= least;
}

}  // namespace prismwright
