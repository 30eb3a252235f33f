#include "core/frame/corner_relief.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/angle.h"
#include "core/frame/nearest_outline.h"
#include "core/frame/plate_step.h"

namespace prismwright {
namespace {

constexpr double kArc_mm = 0.001;
constexpr double kCoarse_mm = 0.01;
constexpr double kCloseArc_mm = 0.004;
constexpr double kReached_mm = 0.003;  // rounding of polygons
constexpr double kOver_mm = 0.004;     // the disc is taken so much bigger, as fits may be a little keener
constexpr double kInset_mm = 0.002;
constexpr double kFarthest = 8;        // in radii: a longer way to a tip is no corner
constexpr double kShareOfThin = 0.12;  // strips are told from rounding by their width

bool sees(const PlateOutline& opening, PlatePoint from, PlatePoint to) {
  for (int k = 1; k < 16; ++k) {
    if (!holds(opening, from + k / 16.0 * (to - from))) return false;
  }
  return true;
}

// What the disc covers on its straight way. At its start it is a little smaller: there it lies on the disc at
// rest, and two outlines that nearly coincide would leave jogs.
PlateOutline led_disc(PlatePoint from, PlatePoint to, double radius) {
  const PlateVector along = unit(to - from);
  const PlateVector side = radius * quarter_turn(along);
  const PlateVector back = (1 - kInset_mm / radius) * side;
  const PlateStep front = arc_step(to + -side, to + side, kPi);
  const PlateStep start = arc_step(from + back, from + -back, kPi);
  return flattened({front, straight_step(front.to, start.from), start, straight_step(start.to, front.from)},
                   kArc_mm);
}

// A coarse look, which is far quicker.
bool may_have_strips(const PlateRegion& openings, double thin_mm) {
  PlateRegion coarse;
  for (const PlateOutline& outline : openings) coarse.push_back(thinned(outline, kCoarse_mm));
  const double half = thin_mm / 2 + kCoarse_mm;
  const PlateRegion closed =
      grown(grown(coarse, half, Corner::round, kCoarse_mm), -half, Corner::round, kCoarse_mm);
  return !grown(first_less_second(closed, coarse), -kShareOfThin / 2 * thin_mm, Corner::sharp).empty();
}

}  // namespace

Relieved relieved(const PlateOutline& opening, double radius_mm) {
  if (radius_mm <= 0) return {opening, false};
  const double radius = radius_mm + kOver_mm;
  const PlateRegion resting = grown({opening}, -radius, Corner::round, kArc_mm);
  if (resting.empty()) return {opening, true};
  const NearestOutline rests(resting);
  Relieved result{opening, false};
  std::vector<NearPlace> tips;
  for (const PlatePoint p : opening) {
    const NearPlace tip = rests.to(p);
    if (tip.away_mm <= radius + kReached_mm) continue;
    if (tip.away_mm < kFarthest * radius && sees(opening, tip.from, tip.nearest)) {
      tips.push_back(tip);
    } else {
      result.too_narrow = true;
    }
  }
  if (tips.empty()) return result;
  std::vector<PlateOutline> parts = grown(resting, radius, Corner::round, kArc_mm);
  if (result.too_narrow) parts.push_back(opening);
  while (!tips.empty()) {
    const NearPlace worst = *std::max_element(
        tips.begin(), tips.end(), [](const NearPlace& a, const NearPlace& b) { return a.away_mm < b.away_mm; });
    const PlatePoint led = worst.nearest + (1 - radius / worst.away_mm) * (worst.from - worst.nearest);
    parts.push_back(led_disc(worst.nearest, led, radius));
    const PlateStep way = straight_step(worst.nearest, led);
    std::erase_if(tips,
                  [&](const NearPlace& tip) { return distance_to(way, tip.from) <= radius + kReached_mm; });
  }
  const auto whole = filled(united(parts));
  const auto biggest = std::max_element(whole.begin(), whole.end(), [](const auto& a, const auto& b) {
    return signed_area_mm2(a) < signed_area_mm2(b);
  });
  if (biggest != whole.end()) result.outline = *biggest;
  return result;
}

bool reaches_all(const PlateOutline& opening, double radius_mm) {
  const double radius = radius_mm - kReached_mm;
  if (radius <= 0) return true;
  const PlateRegion open =
      grown(grown({opening}, -radius, Corner::round, kArc_mm), radius, Corner::round, kArc_mm);
  return grown(first_less_second({opening}, open), -kReached_mm, Corner::sharp).empty();
}

PlateRegion without_thin_brass(const PlateRegion& openings, double thin_mm) {
  if (!may_have_strips(openings, thin_mm)) return openings;
  const double half = thin_mm / 2;
  const PlateRegion closed =
      grown(grown(openings, half, Corner::round, kArc_mm), -half, Corner::round, kArc_mm);
  // Rounding of corners and of polygons is left aside; whole strips and their tapering ends are taken.
  const PlateRegion strips = grown(first_less_second(closed, openings), -kShareOfThin * thin_mm, Corner::sharp);
  if (strips.empty()) return openings;
  std::vector<PlateOutline> parts = common_part(grown(strips, thin_mm, Corner::round), closed);
  parts.insert(parts.end(), openings.begin(), openings.end());
  return united(parts);
}

}  // namespace prismwright
