#include "core/frame/rib_outline.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace prismwright {
namespace {

constexpr double kThinned_mm = 0.05;

constexpr double kLinkedWithin_mm = 1;
// Bays narrower than a tenth of the rib's height close, so that the plate follows the stack as a whole.
constexpr double kBayShare = 0.05;

struct Link {
  PlatePoint from;
  PlatePoint to;
  double length_mm = 0;
};

// The shortest way from the first part to any other, corner to corner.
Link shortest_link(const std::vector<PlateOutline>& parts) {
  Link best;
  double least2 = std::numeric_limits<double>::max();
  const PlateOutline first = thinned(parts.front(), kLinkedWithin_mm);
  for (std::size_t i = 1; i < parts.size(); ++i) {
    for (const PlatePoint b : thinned(parts[i], kLinkedWithin_mm)) {
      for (const PlatePoint a : first) {
        const double length2 = (b.u - a.u) * (b.u - a.u) + (b.v - a.v) * (b.v - a.v);
        if (length2 >= least2) continue;
        least2 = length2;
        best = {a, b, std::sqrt(length2)};
      }
    }
  }
  return best;
}

// A straight bar two margins wide that reaches a margin into both parts.
PlateOutline bar(const Link& link, double margin) {
  const double length = std::max(link.length_mm, 1e-6);
  const PlatePoint along{(link.to.u - link.from.u) / length * margin,
                         (link.to.v - link.from.v) / length * margin};
  const PlatePoint across{-along.v, along.u};
  const PlatePoint start{link.from.u - along.u, link.from.v - along.v};
  const PlatePoint end{link.to.u + along.u, link.to.v + along.v};
  return {{start.u - across.u, start.v - across.v},
          {end.u - across.u, end.v - across.v},
          {end.u + across.u, end.v + across.v},
          {start.u + across.u, start.v + across.v}};
}

std::vector<PlateOutline> joined(std::vector<PlateOutline> parts, double margin) {
  while (parts.size() > 1) {
    parts.push_back(bar(shortest_link(parts), margin));
    const std::size_t before = parts.size() - 1;
    parts = filled(united(parts));
    if (parts.size() >= before) break;
  }
  return parts;
}

// An upright strip from the middle of the highest (lowest) thing held to the ring.
PlateOutline tab(const std::vector<PlateOutline>& held, const RibLimits& limits, bool top) {
  const auto reach = [top](const PlateOutline& outline) {
    const PlateExtent extent = extent_of({outline});
    return top ? extent.high.v : -extent.low.v;
  };
  const auto end =
      std::max_element(held.begin(), held.end(),
                       [&](const PlateOutline& a, const PlateOutline& b) { return reach(a) < reach(b); });
  const PlateExtent extent = extent_of({*end});
  // A pocket that holds a whole stack leans inward: the tab stands over its end, not over its middle.
  const double tip = top ? extent.high.v : extent.low.v;
  double tip_u = 0;
  for (const PlatePoint p : *end) {
    if (p.v == tip) tip_u = p.u;
  }
  // A mere line: the margin that everything gets makes the strip.
  const double from = std::max(limits.least_u_mm + limits.margin_mm, tip_u) - 1;
  const double to = from + 2;
  return top ? plate_rectangle({from, tip - 1}, {to, limits.high_v_mm})
             : plate_rectangle({from, limits.low_v_mm}, {to, tip + 1});
}

}  // namespace

PlateOutline rib_outline(const std::vector<PlateOutline>& held, const RibLimits& limits) {
  if (held.empty()) return {};
  std::vector<PlateOutline> covered = filled(united(held));
  covered.push_back(tab(covered, limits, true));
  covered.push_back(tab(covered, limits, false));
  for (PlateOutline& outline : covered) outline = thinned(outline, kThinned_mm);
  const double bay = kBayShare * (limits.high_v_mm - limits.low_v_mm);
  std::vector<PlateOutline> parts =
      filled(grown(grown(united(covered), limits.margin_mm + bay, Corner::round), -bay, Corner::round));
  parts = joined(std::move(parts), limits.margin_mm);
  const PlateExtent extent = extent_of(parts);
  parts = filled(common_part(
      parts, {plate_rectangle({limits.least_u_mm, limits.low_v_mm}, {extent.high.u + 1, limits.high_v_mm})}));
  if (parts.empty()) return {};
  const auto biggest = std::max_element(
      parts.begin(), parts.end(),
      [](const PlateOutline& a, const PlateOutline& b) { return signed_area_mm2(a) < signed_area_mm2(b); });
  return thinned(*biggest, kThinned_mm);
}

}  // namespace prismwright
