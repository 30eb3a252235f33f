#include "core/drawing/turned_bar_edges.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/works/prism_reach.h"
#include "core/works/section_corners.h"

namespace prismwright {

double BarEdge::straight_mm() const { return length(last - first); }
double BarEdge::round_mm() const { return std::abs(turn) * radius_mm; }

std::vector<BarEdge> edges_of(const TurnedBar& bar) {
  const PrismReach reach(bar.shape);
  std::vector<BarEdge> edges;
  for (const SectionCorner& corner : lettered_corners(bar.shape.profile)) {
    const auto ends = reach.ends_of(corner.place);
    if (!ends) continue;
    BarEdge edge{corner.letter, corner.place, std::abs(corner.place.z), ends->first, ends->last, 0, false};
    edge.whole_turn = ends->whole_turn;
    const auto angle = [&](SpacePoint p) { return std::atan2(p.z - bar.shape.axis_z_mm, p.y); };
    const bool below = bar.shape.trim.half == Half::lower;
    edge.turn = std::remainder(angle(edge.last) - angle(edge.first), 2 * kPi);
    if (!below && edge.turn < 0) edge.turn += 2 * kPi;
    if (below && edge.turn > 0) edge.turn -= 2 * kPi;
    if (edge.whole_turn) edge.turn = 2 * kPi;
    edges.push_back(std::move(edge));
  }
  return edges;
}

PlateExtent extent_from_sea(const TurnedBar& bar) {
  const PrismReach reach(bar.shape);
  const auto across = reach.along({0, 1, 0});
  const auto up = reach.along({0, 0, 1});
  if (!across || !up) return {};
  return {{across->low, up->low}, {across->high, up->high}};
}

PlateExtent section_extent(const TurnedBar& bar) {
  constexpr double kChord_mm = 0.001;
  PlateOutline outline;
  for (const SectionPoint p : polygon_of(bar.shape.profile, kChord_mm)) outline.push_back({p.r, p.z});
  return extent_of({outline});
}

}  // namespace prismwright
