#include "core/frame/plate_sums.h"

#include <algorithm>
#include <cmath>

#include "core/frame/outline_sum.h"

namespace prismwright {

namespace {

PlatePoint less(PlatePoint a, PlatePoint b) { return {a.u - b.u, a.v - b.v}; }

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
  const PlateOutline about = turned_about(shape, {});
  PlateRegion places;
  PlateRegion taken;
  for (const PlateOutline& outline : room) {
    const bool island = signed_area_mm2(outline) < 0;
    const PlateRegion found =
        island ? outline_sum({outline.rbegin(), outline.rend()}, about) : places_inside(outline, shape);
    PlateRegion& all = island ? taken : places;
    all.insert(all.end(), found.begin(), found.end());
  }
  return places.empty() || taken.empty() ? places : first_less_second(places, taken);
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
