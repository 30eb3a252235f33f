#include "core/frame/speck_free.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "core/base/angle.h"
#include "core/frame/carriers_meet.h"
#include "core/frame/plate_step.h"
#include "core/frame/soft_joints.h"

namespace prismwright {
namespace {

constexpr double kMostShare = 0.45;  // of a neighbour that may be cut off for two touching arcs
constexpr int kDoublings = 6;
constexpr double kOverLeast = 1.0002;  // rounding must not bring a radius under the least one
constexpr std::array<double, 5> kWatched{0, 0.25, 0.5, 0.75, 1};

// Short steps between two long ones.
struct Specks {
  PlateStep before;
  PlateChain steps;
  PlateStep after;

  [[nodiscard]] double turn() const {
    double sum = 0;
    PlateVector heading = heading_at_end(before);
    for (const PlateStep& step : steps) {
      sum += turn_between(heading, heading_at_start(step)) + step.turn;
      heading = heading_at_end(step);
    }
    return sum + turn_between(heading, heading_at_start(after));
  }
};

// What takes the place of all of them; empty `between`: the first ends where the last begins.
struct Mended {
  PlateStep before;
  PlateChain between;
  PlateStep after;
};

// Of the places where the carriers of both meet the one near the specks.
std::optional<PlatePoint> meeting_near(const PlateStep& a, const PlateStep& b, PlatePoint place) {
  const auto places = carriers_meet(a, b);
  const auto nearest = std::ranges::min_element(places, {}, [&](PlatePoint p) { return distance(p, place); });
  return nearest == places.end() ? std::nullopt : std::optional(*nearest);
}

// Upright and level lines stay so to the last bit: they lie in the limits of a plate.
void keep_level(const PlateStep& line, PlatePoint& place) {
  if (!line.straight()) return;
  if (line.from.u == line.to.u) place.u = line.from.u;
  if (line.from.v == line.to.v) place.v = line.from.v;
}

double swept(const PlateStep& step, PlatePoint from, PlatePoint to) {
  return step.straight() ? 0 : turn_between(from - step.centre, to - step.centre);
}

bool keeps_near(const PlateChain& mended, const PlateChain& drawn, double within_mm) {
  const auto near = [within_mm](const PlateChain& of, const PlateChain& to) {
    return std::all_of(of.begin(), of.end(), [&](const PlateStep& step) {
      return std::all_of(kWatched.begin(), kWatched.end(), [&](double share) {
        const PlatePoint place = place_along(step, share);
        return std::any_of(to.begin(), to.end(),
                           [&](const PlateStep& other) { return distance_to(other, place) <= within_mm; });
      });
    });
  };
  return near(mended, drawn) && near(drawn, mended);
}

// A neighbour that the corner would cut away whole would be walked backwards.
bool walks_on(const PlateStep& drawn, const PlateStep& mended) {
  return drawn.turn * mended.turn >= 0 && dot(drawn.to - drawn.from, mended.to - mended.from) > 0;
}

PlateChain whole(const Specks& specks) {
  PlateChain chain{specks.before};
  chain.insert(chain.end(), specks.steps.begin(), specks.steps.end());
  chain.push_back(specks.after);
  return chain;
}

std::optional<Mended> cornered(const Specks& specks, const FitRules& rules) {
  const double turn = specks.turn();
  const double least_radius = turn > 0 ? rules.least_left_radius_mm : rules.least_right_radius_mm;
  if (std::abs(turn) < radians(rules.corner_deg) || least_radius > 0) return std::nullopt;
  const PlatePoint middle = place_along(specks.steps[specks.steps.size() / 2], 0.5);
  auto corner = meeting_near(specks.before, specks.after, middle);
  if (!corner) return std::nullopt;
  keep_level(specks.before, *corner);
  keep_level(specks.after, *corner);
  const PlateStep& a = specks.before;
  const PlateStep& b = specks.after;
  Mended mended{arc_step(a.from, *corner, a.turn + swept(a, a.to, *corner)),
                {},
                arc_step(*corner, b.to, b.turn + swept(b, *corner, b.from))};
  if (!walks_on(a, mended.before) || !walks_on(b, mended.after) ||
      !keeps_near({mended.before, mended.after}, whole(specks), rules.within_mm))
    return std::nullopt;
  return mended;
}

std::optional<Mended> joined_by_arcs(const Specks& specks, const FitRules& rules) {
  const PlateStep& a = specks.before;
  const PlateStep& b = specks.after;
  const double most = kMostShare * std::min(length_mm(a), length_mm(b));
  double cut = rules.least_step_mm;
  for (int i = 0; i < kDoublings && cut <= most; ++i, cut *= 2) {
    Mended mended{part_of(a, 0, 1 - cut / length_mm(a)), {}, part_of(b, cut / length_mm(b), 1)};
    mended.between = touching_pair(mended.before.to, heading_at_end(mended.before), mended.after.from,
                                   heading_at_start(mended.after));
    const bool fair = std::all_of(mended.between.begin(), mended.between.end(), [&](const PlateStep& step) {
      const double least = step.turn > 0 ? rules.least_left_radius_mm : rules.least_right_radius_mm;
      return std::abs(step.turn) < kPi / 2 && length_mm(step) >= rules.least_step_mm / 2 &&
             (step.straight() || step.radius_mm >= kOverLeast * least);
    });
    PlateChain walked{mended.before, mended.between[0], mended.between[1], mended.after};
    if (fair && keeps_near(walked, whole(specks), rules.within_mm)) return mended;
  }
  return std::nullopt;
}

}  // namespace

PlateChain speck_free(PlateChain chain, const FitRules& rules) {
  const auto is_long = [&](const PlateStep& step) { return length_mm(step) >= rules.least_step_mm; };
  const auto first = std::find_if(chain.begin(), chain.end(), is_long);
  if (std::count_if(first, chain.end(), is_long) < 2) return chain;
  std::rotate(chain.begin(), first, chain.end());
  PlateChain mended{chain.front()};
  const std::size_t count = chain.size();
  for (std::size_t i = 1; i <= count; ++i) {
    Specks specks{mended.back(), {}, {}};
    for (; i < count && !is_long(chain[i]); ++i) specks.steps.push_back(chain[i]);
    specks.after = i < count ? chain[i] : mended.front();
    if (!specks.steps.empty()) {
      auto better = cornered(specks, rules);
      if (!better) better = joined_by_arcs(specks, rules);
      if (better) {
        mended.back() = better->before;
        specks.steps = better->between;
        specks.after = better->after;
      }
    }
    mended.insert(mended.end(), specks.steps.begin(), specks.steps.end());
    if (i < count) {
      mended.push_back(specks.after);
    } else {
      mended.front() = specks.after;
    }
  }
  return mended;
}

}  // namespace prismwright
