#include "core/frame/corner_relief.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/angle.h"
#include "core/frame/plate_step.h"

namespace prismwright {
namespace {

constexpr double kArc_mm = 0.001;
constexpr double kCloseArc_mm = 0.004;
constexpr double kReached_mm = 0.003;  // rounding of polygons
constexpr double kOver_mm = 0.004;     // the disc is taken so much bigger, that fits may be a little keener
constexpr double kInset_mm = 0.002;
constexpr double kFarthest = 8;        // in radii: a longer way to a tip is no corner
constexpr double kShareOfThin = 0.12;  // strips are told from rounding by their width

struct Tip {
  PlatePoint at;
  PlatePoint rest;  // where the disc rests
  double away_mm;
};

// Distances to a region's outlines; a point is first held against boxes of its stretches.
class NearestOutline {
 public:
  explicit NearestOutline(const PlateRegion& region) {
    for (const PlateOutline& outline : region) {
      for (std::size_t i = 0; i < outline.size(); i += kStretch) add(outline, i);
    }
  }

  [[nodiscard]] Tip to(PlatePoint p) const {
    Tip best{p, p, std::numeric_limits<double>::max()};
    // The stretch that was nearest to the point before is most likely near this one.
    look_at(last_, p, best);
    for (std::size_t i = 0; i < stretches_.size(); ++i) {
      if (i != last_ && look_at(i, p, best)) last_ = i;
    }
    return best;
  }

 private:
  bool look_at(std::size_t i, PlatePoint p, Tip& best) const {
    const Stretch& stretch = stretches_[i];
    const PlateExtent& box = stretch.box;
    const double du = std::max({box.low.u - p.u, 0.0, p.u - box.high.u});
    const double dv = std::max({box.low.v - p.v, 0.0, p.v - box.high.v});
    const double before = best.away_mm;
    if (std::hypot(du, dv) >= before) return false;
    for (std::size_t k = 0; k + 1 < stretch.points.size(); ++k) {
      take(stretch.points[k], stretch.points[k + 1], best);
    }
    return best.away_mm < before;
  }

  static constexpr std::size_t kStretch = 24;
  struct Stretch {
    PlateOutline points;
    PlateExtent box;
  };

  void add(const PlateOutline& outline, std::size_t from) {
    Stretch stretch;
    for (std::size_t k = from; k <= std::min(from + kStretch, outline.size()); ++k) {
      stretch.points.push_back(outline[k % outline.size()]);
    }
    stretch.box = extent_of({stretch.points});
    stretches_.push_back(std::move(stretch));
  }

  static void take(PlatePoint a, PlatePoint b, Tip& best) {
    const PlateVector edge = b - a;
    const double square = dot(edge, edge);
    const double share = square > 0 ? std::clamp(dot(best.at - a, edge) / square, 0.0, 1.0) : 0;
    const PlatePoint place = a + share * edge;
    const double away = distance(best.at, place);
    if (away < best.away_mm) best = {best.at, place, away};
  }

  std::vector<Stretch> stretches_;
  mutable std::size_t last_ = 0;
};

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

}  // namespace

Relieved relieved(const PlateOutline& opening, double radius_mm) {
  if (radius_mm <= 0) return {opening, false};
  const double radius = radius_mm + kOver_mm;
  const PlateRegion resting = grown({opening}, -radius, Corner::round, kArc_mm);
  if (resting.empty()) return {opening, true};
  const NearestOutline rests(resting);
  Relieved result{opening, false};
  std::vector<Tip> tips;
  for (const PlatePoint p : opening) {
    const Tip tip = rests.to(p);
    if (tip.away_mm <= radius + kReached_mm) continue;
    if (tip.away_mm < kFarthest * radius && sees(opening, tip.at, tip.rest)) {
      tips.push_back(tip);
    } else {
      result.too_narrow = true;
    }
  }
  if (tips.empty()) return result;
  std::vector<PlateOutline> parts = grown(resting, radius, Corner::round, kArc_mm);
  if (result.too_narrow) parts.push_back(opening);
  while (!tips.empty()) {
    const Tip worst = *std::max_element(tips.begin(), tips.end(),
                                        [](const Tip& a, const Tip& b) { return a.away_mm < b.away_mm; });
    const PlatePoint led = worst.rest + (1 - radius / worst.away_mm) * (worst.at - worst.rest);
    parts.push_back(led_disc(worst.rest, led, radius));
    const PlateStep way = straight_step(worst.rest, led);
    std::erase_if(tips, [&](const Tip& tip) { return distance_to(way, tip.at) <= radius + kReached_mm; });
  }
  const auto whole = filled(united(parts));
  const auto biggest = std::max_element(whole.begin(), whole.end(), [](const auto& a, const auto& b) {
    return signed_area_mm2(a) < signed_area_mm2(b);
  });
  if (biggest != whole.end()) result.outline = *biggest;
  return result;
}

PlateRegion without_thin_brass(const PlateRegion& openings, double thin_mm) {
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
