#include <algorithm>
#include <cmath>
#include <optional>

#include "core/frame/fit_course.h"
#include "core/frame/fit_rules.h"
#include "core/frame/plate_step.h"
#include "core/frame/soft_joints.h"
#include "core/frame/speck_free.h"
#include "core/frame/stretch_fit.h"

namespace prismwright {
namespace {

constexpr int kCostOfEdge = 12;  // of an edge taken as it is, in steps: it may meet its neighbours at an angle
constexpr std::size_t kBehind = 6;  // so many points behind the farthest that is as cheap are still tried
constexpr std::size_t kTriedAnyway = 8;

// The cheapest way from one corner to the next, by the count of steps: what is reached with few steps is
// followed on from the farthest places reached so.
class SpanFitter {
 public:
  SpanFitter(const StretchFitter& fitter, std::size_t from, std::size_t last)
      : fitter_(fitter), from_(from), last_(last), best_(last - from + 1) {}

  void fit_into(PlateChain& chain) {
    reach(from_, 0, from_, {});
    for (std::size_t cost = 0; cost < by_cost_.size() && best_.back().cost < 0; ++cost) {
      const std::size_t farthest = farthest_;
      const std::vector<std::size_t> places = by_cost_[cost];
      for (const std::size_t i : places) {
        farthest_ = std::max(farthest_, i);
        if (i + kBehind >= farthest && best_[i - from_].cost == static_cast<int>(cost)) go_on_from(i);
      }
    }
    take(chain);
  }

 private:
  struct Best {
    int cost = -1;
    std::size_t before = 0;
    Fit fit;
  };

  void go_on_from(std::size_t i) {
    const int cost = best_[i - from_].cost;
    const auto single = [&](std::size_t end) { return tried(i, end, cost + 1, fitter_.single(i, end)); };
    const auto pair = [&](std::size_t end) { return tried(i, end, cost + 2, fitter_.pair(i, end)); };
    const std::size_t one = search(i, single);
    if (one < last_) search(i, pair);
    if (best_[i + 1 - from_].cost < 0) reach(i + 1, cost + kCostOfEdge, i, fitter_.edge(i));
  }

  bool tried(std::size_t from, std::size_t end, int cost, const std::optional<Fit>& fit) {
    if (fit) reach(end, cost, from, *fit);
    return fit.has_value();
  }

  void reach(std::size_t end, int cost, std::size_t before, const Fit& fit) {
    Best& best = best_[end - from_];
    if (best.cost >= 0 && best.cost <= cost) return;
    best = {cost, before, fit};
    const auto bucket = static_cast<std::size_t>(cost);
    if (by_cost_.size() <= bucket) by_cost_.resize(bucket + 1);
    by_cost_[bucket].push_back(end);
  }

  // The farthest end that holds, by doubling, then halving; every end that holds on the way is noted.
  template <class Holds>
  std::size_t search(std::size_t from, Holds holds) const {
    std::size_t good = from;
    std::size_t failed = last_ + 1;
    for (std::size_t ahead = 1;; ahead *= 2) {
      const std::size_t end = std::min(from + ahead, last_);
      if (holds(end)) {
        good = end;
      } else {
        failed = end;
        if (ahead > kTriedAnyway) break;
      }
      if (end == last_) break;
    }
    for (std::size_t ahead = 3; good == from && ahead <= kTriedAnyway; ++ahead) {
      if (from + ahead <= last_ && holds(from + ahead)) good = from + ahead;
    }
    if (failed <= good) failed = last_ + 1;
    while (good > from && failed - good > 1) {
      const std::size_t middle = good + (failed - good) / 2;
      (holds(middle) ? good : failed) = middle;
    }
    return good;
  }

  void take(PlateChain& chain) const {
    std::vector<std::size_t> way;
    for (std::size_t i = last_; i != from_; i = best_[i - from_].before) way.push_back(i);
    for (auto i = way.rbegin(); i != way.rend(); ++i) {
      const Fit& fit = best_[*i - from_].fit;
      for (int k = 0; k < fit.count; ++k) {
        const PlateStep& step = fit.steps[static_cast<std::size_t>(k)];
        if (distance(step.from, step.to) > 0) chain.push_back(step);
      }
    }
  }

  const StretchFitter& fitter_;
  std::size_t from_;
  std::size_t last_;
  std::size_t farthest_ = 0;
  std::vector<Best> best_;
  std::vector<std::vector<std::size_t>> by_cost_;
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
std::optional<PlateChain> whole_circle(const PlateOutline& outline, const FitRules& rules) {
  const double within_mm = rules.within_mm;
  if (outline.size() < 8 || rules.keeps_edge) return std::nullopt;
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

// Where the longest single step from here ends, roughly.
std::size_t end_of_longest(const StretchFitter& fitter, std::size_t start, std::size_t count) {
  std::size_t ahead = 1;
  while (2 * ahead < count && fitter.single(start, start + 2 * ahead)) ahead *= 2;
  for (std::size_t by = ahead / 2; by > 0; by /= 2) {
    if (ahead + by < count && fitter.single(start, start + ahead + by)) ahead += by;
  }
  return (start + ahead) % count;
}

}  // namespace

PlateChain fitted_chain(const PlateOutline& outline, double within_mm, double corner_deg) {
  return fitted_chain(outline, FitRules{within_mm, corner_deg, {}, 0, 0, 0, {}});
}

PlateChain fitted_chain(const PlateOutline& outline, const FitRules& rules) {
  if (outline.size() < 3) return {};
  if (const auto circle = whole_circle(outline, rules)) return *circle;
  const FitCourse course(outline, rules);
  const StretchFitter fitter(course, rules);
  PlateChain chain;
  std::size_t start = course.start();
  // Without corners the end of a long step is a better place to begin than its middle.
  if (!course.ends_span(start)) start = end_of_longest(fitter, start, course.size());
  std::size_t from = start;
  for (std::size_t i = start + 1; i <= start + course.size(); ++i) {
    if (i < start + course.size() && !course.ends_span(i)) continue;
    SpanFitter(fitter, from, i).fit_into(chain);
    from = i;
  }
  return speck_free(soft_joints(std::move(chain), rules), rules);
}

}  // namespace prismwright
