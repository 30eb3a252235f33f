#include "core/frame/plate_sums.h"

#include <algorithm>
#include <cmath>

#include "core/frame/outline_sum.h"

namespace prismwright {

namespace {

PlatePoint less(PlatePoint a, PlatePoint b) { return {a.u - b.u, a.v - b.v}; }

double cross_of(PlatePoint a, PlatePoint b) { return a.u * b.v - a.v * b.u; }

/// The parallelogram that one edge sweeps along the other, anticlockwise; empty where they are parallel.
PlateOutline swept_edge(PlatePoint from, PlatePoint along, PlatePoint other_from, PlatePoint other_along) {
  constexpr double kNoArea_mm2 = 1e-9;
  const double area = cross_of(along, other_along);
  if (std::abs(area) < kNoArea_mm2) return {};
  const PlatePoint a = less(from, other_from);
  const PlatePoint b = {a.u + along.u, a.v + along.v};
  const PlatePoint c = less(b, other_along);
  const PlatePoint d = less(a, other_along);
  // The second edge is taken off, so that a positive area runs the other way round.
  return area > 0 ? PlateOutline{a, d, c, b} : PlateOutline{a, b, c, d};
}

/// Where the edges of `outline` and of the shape would touch or cross: the sum of `outline` and the shape
/// turned about by half a turn.
void add_edge_sums(const PlateOutline& outline, const PlateOutline& shape, std::vector<PlateOutline>& sums) {
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const PlatePoint from = outline[i];
    const PlatePoint along = less(outline[(i + 1) % outline.size()], from);
    for (std::size_t k = 0; k < shape.size(); ++k) {
      PlateOutline swept = swept_edge(from, along, shape[k], less(shape[(k + 1) % shape.size()], shape[k]));
      if (!swept.empty()) sums.push_back(std::move(swept));
    }
  }
}

PlateOutline turned_about(const PlateOutline& shape, PlatePoint by) {
  PlateOutline result;
  result.reserve(shape.size());
  for (const PlatePoint p : shape) result.push_back(less(by, p));
  return result;
}

/// The shape is no wider and no taller than the hole.
bool fits_box(const PlateOutline& shape, const PlateOutline& hole) {
  const PlateExtent a = extent_of(PlateRegion{shape});
  const PlateExtent b = extent_of(PlateRegion{hole});
  return a.high.u - a.low.u < b.high.u - b.low.u && a.high.v - a.low.v < b.high.v - b.low.v;
}

}  // namespace

PlateRegion moved(const PlateRegion& region, double turn_rad, PlatePoint shift) {
  const double c = std::cos(turn_rad);
  const double s = std::sin(turn_rad);
  PlateRegion result = region;
  for (PlateOutline& outline : result) {
    for (PlatePoint& p : outline) p = {c * p.u - s * p.v + shift.u, s * p.u + c * p.v + shift.v};
  }
  return result;
}

PlateRegion places_that_meet(const PlateRegion& fixed, const PlateOutline& shape) {
  const PlateOutline about = turned_about(shape, {});
  PlateRegion meeting;
  PlateRegion free;
  for (const PlateOutline& outline : fixed) {
    if (signed_area_mm2(outline) > 0) {
      const PlateRegion sum = outline_sum(outline, about);
      meeting.insert(meeting.end(), sum.begin(), sum.end());
    } else if (fits_box(shape, outline)) {
      const PlateRegion within = places_within({{outline.rbegin(), outline.rend()}}, shape);
      free.insert(free.end(), within.begin(), within.end());
    }
  }
  return free.empty() ? meeting : first_less_second(meeting, free);
}

PlateRegion places_within(const PlateRegion& room, const PlateOutline& shape) {
  std::vector<PlateOutline> sums;
  for (const PlateOutline& outline : room) add_edge_sums(outline, shape, sums);
  const PlatePoint corner = shape.front();
  PlateRegion places = first_less_second(moved(room, 0, {-corner.u, -corner.v}), united(sums));
  // A hole of the room may stand wholly within the shape.
  std::vector<PlateOutline> round_holes;
  for (const PlateOutline& outline : room) {
    if (signed_area_mm2(outline) < 0) round_holes.push_back(turned_about(shape, outline.front()));
  }
  return round_holes.empty() ? places : first_less_second(places, united(round_holes));
}

PlatePoint roomiest_point(const PlateRegion& region, double within_mm) {
  const PlateExtent extent = extent_of(region);
  double shrunk = 0;
  double gone = std::min(extent.high.u - extent.low.u, extent.high.v - extent.low.v) / 2 + within_mm;
  PlateRegion last = region;
  while (gone - shrunk > within_mm) {
    const double middle = (shrunk + gone) / 2;
    PlateRegion smaller = grown(region, -middle, Corner::sharp);
    if (smaller.empty()) {
      gone = middle;
    } else {
      shrunk = middle;
      last = std::move(smaller);
    }
  }
  // What is left is a sliver round the point, or along a line of equal room. The middles of its sides lie in
  // it.
  const PlateOutline& sliver = last.front();
  const PlateExtent left = extent_of(PlateRegion{sliver});
  const PlatePoint middle = {(left.low.u + left.high.u) / 2, (left.low.v + left.high.v) / 2};
  const auto away = [&](PlatePoint p) { return std::hypot(p.u - middle.u, p.v - middle.v); };
  PlatePoint best = sliver.front();
  for (std::size_t i = 0; i < sliver.size(); ++i) {
    const PlatePoint next = sliver[(i + 1) % sliver.size()];
    const PlatePoint half = {(sliver[i].u + next.u) / 2, (sliver[i].v + next.v) / 2};
    if (away(half) < away(best)) best = half;
  }
  return best;
}

}  // namespace prismwright
