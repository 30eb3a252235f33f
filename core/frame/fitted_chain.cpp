#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "core/base/angle.h"
#include "core/frame/fit_course.h"
#include "core/frame/plate_chain.h"
#include "core/frame/plate_step.h"

namespace prismwright {
namespace {

constexpr double kMostKink_rad = radians(0.45);  // of one step against the course; two meet within a degree
constexpr double kMostTurn_rad = 1.2 * kPi;      // a circle is two half turns at least
constexpr double kUsedShare = 0.98;              // of the allowance: it is measured at places, not everywhere
constexpr double kLongEdge = 40;                 // in allowances: such an edge is watched at more places

// One step, or two that touch each other.
struct Fit {
  std::array<PlateStep, 2> steps;
  int count = 0;
};

PlateStep touching_step(PlatePoint from, PlateVector heading, PlatePoint to) {
  return arc_step(from, to, 2 * turn_between(heading, to - from));
}

// Fits steps to stretches of a course.
class StretchFitter {
 public:
  StretchFitter(const FitCourse& course, double within_mm)
      : course_(course), within_mm_(kUsedShare * within_mm) {}

  [[nodiscard]] std::optional<Fit> single(std::size_t i, std::size_t j) const {
    const PlatePoint from = course_.at(i);
    const PlatePoint to = course_.at(j);
    if (distance(from, to) == 0) return std::nullopt;
    const Fit line{{straight_step(from, to), {}}, 1};
    if (holds(line, i, j)) return line;
    const double turn = best_turn(i, j);
    if (std::abs(turn) > kMostTurn_rad) return std::nullopt;
    const Fit arc{{arc_step(from, to, turn), {}}, 1};
    return holds(arc, i, j) ? std::optional(arc) : std::nullopt;
  }

  // A pair of arcs (either may be straight) between given headings T0, T1 with legs d0, d1, V the chord:
  // V^2 - 2 d0 V T0 - 2 d1 V T1 - 2 d0 d1 (1 - T0 T1) = 0. Own derivation from |V - d0 T0 - d1 T1| = d0 + d1.
  [[nodiscard]] std::optional<Fit> pair(std::size_t i, std::size_t j) const {
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

  // What is taken where nothing holds: one edge as it is.
  [[nodiscard]] Fit edge(std::size_t i) const {
    return {{straight_step(course_.at(i), course_.at(i + 1)), {}}, 1};
  }

 private:
  [[nodiscard]] Fit pair_with(std::size_t i, std::size_t j, double d0, double d1) const {
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
  [[nodiscard]] double best_turn(std::size_t i, std::size_t j) const {
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

  [[nodiscard]] bool holds(const Fit& fit, std::size_t i, std::size_t j) const {
    const PlateStep& last = fit.steps[static_cast<std::size_t>(fit.count - 1)];
    const auto kinked = [](PlateVector a, PlateVector b) {
      return std::abs(turn_between(a, b)) > kMostKink_rad;
    };
    if (!course_.corner(i) && kinked(heading_at_start(fit.steps[0]), course_.heading_out(i))) return false;
    if (!course_.corner(j) && kinked(heading_at_end(last), course_.heading_in(j))) return false;
    for (int k = 0; k < fit.count; ++k) {
      if (std::abs(fit.steps[static_cast<std::size_t>(k)].turn) > kMostTurn_rad) return false;
    }
    for (std::size_t k = i; k < j; ++k) {
      if (k > i && far(fit, course_.at(k), course_.spent_mm(k))) return false;
      if (far(fit, course_.over_edge(k), std::max(course_.spent_mm(k), course_.spent_mm(k + 1)))) return false;
      if (course_.edge_mm(k) > kLongEdge * within_mm_ && strays(fit, k)) return false;
    }
    return true;
  }

  [[nodiscard]] bool strays(const Fit& fit, std::size_t k) const {
    const PlateVector edge = course_.at(k + 1) - course_.at(k);
    const PlateVector rise = course_.over_edge(k) - (course_.at(k) + 0.5 * edge);
    // The smooth curve stands 4 s (1 - s) of its greatest rise over the edge.
    return std::any_of(kWatched.begin(), kWatched.end(), [&](double s) {
      return far(fit, course_.at(k) + s * edge + 4 * s * (1 - s) * rise, 0);
    });
  }

  [[nodiscard]] bool far(const Fit& fit, PlatePoint place, double spent_mm) const {
    const double left = within_mm_ - spent_mm;
    if (distance_to(fit.steps[0], place) <= left) return false;
    return fit.count == 1 || distance_to(fit.steps[1], place) > left;
  }

  static constexpr std::array<double, 4> kWatched{0.1, 0.25, 0.75, 0.9};

  const FitCourse& course_;
  double within_mm_;
};

struct Reach {
  std::size_t end = 0;
  std::optional<Fit> fit;
};

// The farthest end at which `fit_to` holds: by doubling, then halving.
template <class FitTo>
Reach farthest(std::size_t from, std::size_t last, FitTo fit_to) {
  constexpr std::size_t kTriedAnyway = 8;
  Reach best{from, std::nullopt};
  std::size_t failed = last + 1;
  for (std::size_t ahead = 1;; ahead *= 2) {
    const std::size_t end = std::min(from + ahead, last);
    if (auto fit = fit_to(end)) {
      best = {end, fit};
    } else {
      failed = end;
      if (ahead > kTriedAnyway) break;
    }
    if (end == last) break;
  }
  if (failed <= best.end) failed = last + 1;
  while (best.fit && failed - best.end > 1) {
    const std::size_t middle = best.end + (failed - best.end) / 2;
    if (auto fit = fit_to(middle)) {
      best = {middle, fit};
    } else {
      failed = middle;
    }
  }
  return best;
}

// Steps from one corner to the next.
class SpanFitter {
 public:
  SpanFitter(const FitCourse& course, const StretchFitter& fitter, PlateChain& chain)
      : course_(course), fitter_(fitter), chain_(chain) {}

  /// How many points the longest single step from here passes.
  [[nodiscard]] std::size_t single_reach(std::size_t from) const {
    return longest_single(from, from + course_.size()).end - from;
  }

  void fit(std::size_t from, std::size_t last) {
    Reach single = longest_single(from, last);
    while (from < last) {
      // Two steps that touch are worth it where they lead farther than two single ones.
      Reach next = single.fit && single.end < last ? longest_single(single.end, last) : Reach{single.end, {}};
      const std::size_t two = next.fit ? next.end : single.end;
      const Reach pair = single.fit && single.end == last ? Reach{} : longest_pair(from, last);
      if (pair.fit && (pair.end > two || !single.fit)) {
        take(*pair.fit);
        from = pair.end;
        single = longest_single(from, last);
      } else if (single.fit) {
        take(*single.fit);
        from = single.end;
        single = next.fit ? next : longest_single(from, last);
      } else {
        take(fitter_.edge(from));
        from += 1;
        single = longest_single(from, last);
      }
    }
  }

 private:
  [[nodiscard]] Reach longest_single(std::size_t from, std::size_t last) const {
    return farthest(from, last, [&](std::size_t end) { return fitter_.single(from, end); });
  }
  [[nodiscard]] Reach longest_pair(std::size_t from, std::size_t last) const {
    return farthest(from, last, [&](std::size_t end) { return fitter_.pair(from, end); });
  }

  void take(const Fit& fit) {
    for (int k = 0; k < fit.count; ++k) {
      const PlateStep& step = fit.steps[static_cast<std::size_t>(k)];
      if (distance(step.from, step.to) > 0) chain_.push_back(step);
    }
  }

  const FitCourse& course_;
  const StretchFitter& fitter_;
  PlateChain& chain_;
};

PlatePoint centroid(const PlateOutline& outline) {
  double area = 0, u = 0, v = 0;
  const PlatePoint base = outline.front();
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const PlateVector a = outline[i] - base;
    const PlateVector b = outline[(i + 1) % outline.size()] - base;
    const double part = cross(a, b);
    area += part;
    u += part * (a.u + b.u) / 3;
    v += part * (a.v + b.v) / 3;
  }
  return {base.u + u / area, base.v + v / area};
}

// A whole circle that the polygon stands for, if it does.
std::optional<PlateChain> whole_circle(const PlateOutline& outline, double within_mm) {
  if (outline.size() < 8) return std::nullopt;
  const PlatePoint middle = centroid(outline);
  double least = distance(middle, outline.front());
  double most = least;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const PlatePoint a = outline[i];
    const PlatePoint b = outline[(i + 1) % outline.size()];
    const double away = distance(middle, a);
    least = std::min(least, away);
    most = std::max(most, away);
    if (distance(middle, a + 0.5 * (b - a)) < away - 2 * within_mm) return std::nullopt;
  }
  if (!(most - least < 1.8 * within_mm)) return std::nullopt;
  return circle_chain(middle, (least + most) / 2);
}

}  // namespace

PlateChain fitted_chain(const PlateOutline& outline, double within_mm, double corner_deg) {
  if (outline.size() < 3) return {};
  if (const auto circle = whole_circle(outline, within_mm)) return *circle;
  const FitCourse course(outline, within_mm, corner_deg);
  const StretchFitter fitter(course, within_mm);
  PlateChain chain;
  SpanFitter spans(course, fitter, chain);
  std::size_t start = course.start();
  // Without corners the end of a long step is a better place to begin than its middle.
  if (!course.corner(start)) start = (start + spans.single_reach(start)) % course.size();
  std::size_t from = start;
  for (std::size_t i = start + 1; i <= start + course.size(); ++i) {
    if (i < start + course.size() && !course.corner(i)) continue;
    spans.fit(from, i);
    from = i;
  }
  return chain;
}

}  // namespace prismwright
