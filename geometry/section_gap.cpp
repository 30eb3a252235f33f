#include "geometry/section_gap.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/frame/step_gap.h"

namespace prismwright {
namespace {

double apart_mm(const PlateExtent& a, const PlateExtent& b) {
  const double u = std::max({0.0, a.low.u - b.high.u, b.low.u - a.high.u});
  const double v = std::max({0.0, a.low.v - b.high.v, b.low.v - a.high.v});
  return std::hypot(u, v);
}

}  // namespace

std::optional<SectionGap> section_gap(const RegionField& first, const RegionField& second) {
  if (first.steps().empty() || second.steps().empty()) return std::nullopt;
  if (first.holds(second.steps().front().from) || second.holds(first.steps().front().from)) return std::nullopt;
  SectionGap best{std::numeric_limits<double>::max(), {}, {}};
  for (std::size_t i = 0; i < first.steps().size(); ++i) {
    for (std::size_t k = 0; k < second.steps().size(); ++k) {
      if (apart_mm(first.boxes()[i], second.boxes()[k]) >= best.gap_mm) continue;
      const StepGap gap = gap_of(first.steps()[i], second.steps()[k]);
      if (gap.gap_mm == 0) return std::nullopt;
      if (gap.gap_mm < best.gap_mm) best = {gap.gap_mm, gap.first, gap.second};
    }
  }
  return best;
}

}  // namespace prismwright
