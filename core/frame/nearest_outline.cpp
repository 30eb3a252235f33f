#include "core/frame/nearest_outline.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/frame/plate_step.h"

namespace prismwright {
namespace {

constexpr std::size_t kStretch = 24;

void take(PlatePoint a, PlatePoint b, NearPlace& best) {
  const PlateVector edge = b - a;
  const double square = dot(edge, edge);
  const double share = square > 0 ? std::clamp(dot(best.from - a, edge) / square, 0.0, 1.0) : 0;
  const PlatePoint place = a + share * edge;
  const double away = distance(best.from, place);
  if (away < best.away_mm) best = {best.from, place, away};
}

}  // namespace

NearestOutline::NearestOutline(const PlateRegion& outlines) {
  for (const PlateOutline& outline : outlines) {
    for (std::size_t i = 0; i < outline.size(); i += kStretch) {
      Stretch stretch;
      for (std::size_t k = i; k <= std::min(i + kStretch, outline.size()); ++k) {
        stretch.points.push_back(outline[k % outline.size()]);
      }
      stretch.box = extent_of({stretch.points});
      stretches_.push_back(std::move(stretch));
    }
  }
}

NearPlace NearestOutline::to(PlatePoint p) const {
  NearPlace best{p, p, std::numeric_limits<double>::max()};
  if (stretches_.empty()) return best;
  look_at(last_, best);
  for (std::size_t i = 0; i < stretches_.size(); ++i) {
    if (i != last_ && look_at(i, best)) last_ = i;
  }
  return best;
}

bool NearestOutline::look_at(std::size_t i, NearPlace& best) const {
  const Stretch& stretch = stretches_[i];
  const PlateExtent& box = stretch.box;
  const double du = std::max({box.low.u - best.from.u, 0.0, best.from.u - box.high.u});
  const double dv = std::max({box.low.v - best.from.v, 0.0, best.from.v - box.high.v});
  const double before = best.away_mm;
  if (du * du + dv * dv >= before * before) return false;
  for (std::size_t k = 0; k + 1 < stretch.points.size(); ++k) {
    take(stretch.points[k], stretch.points[k + 1], best);
  }
  return best.away_mm < before;
}

}  // namespace prismwright
