#include "core/frame/soft_joints.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"

namespace prismwright {
namespace {

constexpr double kMostKink_rad = radians(0.9);
constexpr double kLeastCut_mm = 0.02;
constexpr double kMostShare = 0.45;  // of a step that may be cut off at one end
constexpr double kFarLonger = 50;
constexpr double kOverRadius = 1.1;

// How far before and after the joint the arcs begin; 0 where it stays.
double cut_at(const PlateStep& before, const PlateStep& after, const FitRules& rules) {
  const double turn = turn_between(heading_at_end(before), heading_at_start(after));
  const double most = radians(turn > 0 ? rules.corner_deg : rules.right_corner_deg.value_or(rules.corner_deg));
  if (std::abs(turn) <= kMostKink_rad || std::abs(turn) > most) return 0;
  const double least = turn > 0 ? rules.least_left_radius_mm : rules.least_right_radius_mm;
  const double room = kMostShare * std::min(length_mm(before), length_mm(after));
  const double cut = std::max(kLeastCut_mm, kOverRadius * least * std::tan(std::abs(turn) / 2));
  if (cut > room) return 0;
  return std::max(cut, std::min(rules.least_step_mm, room));
}

// A step shorter than the allowance between far longer ones is left out: the step before ends where it did.
void take_in_short_steps(PlateChain& chain, double within_mm) {
  for (std::size_t i = 0; i < chain.size() && chain.size() > 3; ++i) {
    PlateStep& before = chain[(i + chain.size() - 1) % chain.size()];
    if (!chain[i].straight() || length_mm(chain[i]) > within_mm) continue;
    if (length_mm(before) < kFarLonger * within_mm) continue;
    before = arc_step(before.from, chain[i].to, before.turn);
    chain.erase(chain.begin() + static_cast<std::ptrdiff_t>(i));
    --i;
  }
}

PlateStep touching_step(PlatePoint from, PlateVector heading, PlatePoint to) {
  return arc_step(from, to, 2 * turn_between(heading, to - from));
}

}  // namespace

PlateChain touching_pair(PlatePoint from, PlateVector first, PlatePoint to, PlateVector last) {
  const PlateVector chord = to - from;
  const double along = dot(chord, first) + dot(chord, last);
  const double square = dot(chord, chord);
  const double leg = square / (along + std::sqrt(along * along + 2 * (1 - dot(first, last)) * square));
  const PlatePoint a = from + leg * first;
  const PlatePoint joint = a + 0.5 * ((to + -leg * last) - a);
  return {touching_step(from, first, joint), reversed(touching_step(to, -last, joint))};
}

PlateChain soft_joints(PlateChain chain, const FitRules& rules) {
  take_in_short_steps(chain, rules.within_mm);
  const std::size_t count = chain.size();
  std::vector<double> cuts(count, 0);  // at the end of each step
  for (std::size_t i = 0; i < count; ++i) cuts[i] = cut_at(chain[i], chain[(i + 1) % count], rules);
  PlateChain soft;
  for (std::size_t i = 0; i < count; ++i) {
    const double length = length_mm(chain[i]);
    const double start = cuts[(i + count - 1) % count] / length;
    const double end = 1 - cuts[i] / length;
    soft.push_back(start == 0 && end == 1 ? chain[i] : part_of(chain[i], start, end));
    if (cuts[i] == 0) continue;
    const PlateStep& next = chain[(i + 1) % count];
    const PlateStep after = part_of(next, cuts[i] / length_mm(next), 1);
    for (const PlateStep& step :
         touching_pair(soft.back().to, heading_at_end(soft.back()), after.from, heading_at_start(after))) {
      soft.push_back(step);
    }
  }
  return soft;
}

}  // namespace prismwright
