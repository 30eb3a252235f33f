#include "core/frame/rib_outline.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/frame/fit_rules.h"

namespace prismwright {
namespace {

// Together they stay within the 0.05 mm that the margin may lack. The fit departs farther, so that few steps
// do: it starts from an outline that is as much wider.
constexpr double kThinned_mm = 0.03;
constexpr double kArc_mm = 0.02;
constexpr double kLeastFit_mm = 0.03;
constexpr double kFitShare = 0.06;  // of the margin
constexpr double kBayArc_mm = 0.2;  // bays are filled with no great care
constexpr double kRagged_mm = 0.05;
constexpr double kLeastStep_mm = 0.2;
// Rounded inside corners are no corners: what straightening leaves of a turn there is smoothed.
constexpr double kInsideTurn_deg = 30;

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

double fit_within(const RibLimits& limits) { return std::max(kLeastFit_mm, kFitShare * limits.margin_mm); }

// Everything held with its margin, in one piece, within the limits.
PlateOutline covered_plate(const std::vector<PlateOutline>& held, const RibLimits& limits) {
  std::vector<PlateOutline> covered = filled(united(held));
  covered.push_back(tab(covered, limits, true));
  covered.push_back(tab(covered, limits, false));
  for (PlateOutline& outline : covered) outline = thinned(outline, kThinned_mm);
  const double bay = kBayShare * (limits.high_v_mm - limits.low_v_mm);
  PlateRegion plate = grown(united(covered), limits.margin_mm + fit_within(limits), Corner::round, kArc_mm);
  const PlateRegion closed =
      grown(grown(plate, bay, Corner::round, kBayArc_mm), -bay, Corner::round, kBayArc_mm);
  plate.insert(plate.end(), closed.begin(), closed.end());
  std::vector<PlateOutline> parts = filled(plate);
  parts = joined(std::move(parts), limits.margin_mm);
  const PlateExtent extent = extent_of(parts);
  parts = filled(common_part(
      parts, {plate_rectangle({limits.least_u_mm, limits.low_v_mm}, {extent.high.u + 1, limits.high_v_mm})}));
  if (parts.empty()) return {};
  return *std::max_element(parts.begin(), parts.end(), [](const PlateOutline& a, const PlateOutline& b) {
    return signed_area_mm2(a) < signed_area_mm2(b);
  });
}

// Inside corners as a disc leaves them. The plate stays within its limits, as they are straight.
PlateOutline rounded_inside(const PlateRegion& plate, double radius) {
  const auto closed =
      filled(grown(grown(plate, radius, Corner::round, kArc_mm), -radius, Corner::round, kArc_mm));
  return closed.empty() ? PlateOutline{} : closed.front();
}

// Least and greatest u of the outer edge over a range of heights.
struct OuterSpan {
  double least_u = std::numeric_limits<double>::max();
  double most_u = std::numeric_limits<double>::lowest();
};
OuterSpan outer_span(const PlateOutline& plate, HeightRange heights) {
  constexpr int kSteps = 64;
  OuterSpan span;
  for (int k = 0; k <= kSteps; ++k) {
    const double v = heights.low + (heights.high - heights.low) * k / kSteps;
    double outer = std::numeric_limits<double>::lowest();
    for (std::size_t i = 0; i < plate.size(); ++i) {
      const PlatePoint a = plate[i];
      const PlatePoint b = plate[(i + 1) % plate.size()];
      if ((a.v > v) != (b.v > v)) outer = std::max(outer, a.u + (b.u - a.u) * (v - a.v) / (b.v - a.v));
    }
    span.least_u = std::min(span.least_u, outer);
  }
  for (const PlatePoint p : plate) {
    if (p.v >= heights.low && p.v <= heights.high) span.most_u = std::max(span.most_u, p.u);
  }
  return span;
}

// The fillets at a pad's ends reach a radius into it at most: it is made longer by as much.
PlateOutline pad_block(const PlateOutline& plate, HeightRange heights, double radius, double margin) {
  const HeightRange longer{heights.low - radius, heights.high + radius};
  OuterSpan span = outer_span(plate, longer);
  if (span.least_u == std::numeric_limits<double>::lowest()) return {};
  span.most_u = std::max(span.most_u, span.least_u);
  return plate_rectangle({span.least_u - margin, longer.low}, {span.most_u, longer.high});
}

// Polygons leave the ends and the pads ragged by what their arcs depart: they become straight.
void straighten(PlateOutline& plate, const std::vector<double>& ends_v, const std::vector<PlateOutline>& pads) {
  for (PlatePoint& p : plate) {
    for (const double end : ends_v) {
      if (std::abs(p.v - end) < kRagged_mm) p.v = end;
    }
    for (const PlateOutline& pad : pads) {
      const bool beside = p.v > pad[0].v - kRagged_mm && p.v < pad[2].v + kRagged_mm;
      if (beside && std::abs(p.u - pad[1].u) < kRagged_mm) p.u = pad[1].u;
    }
  }
  const auto between_like = [&](std::size_t i) {
    const PlatePoint a = plate[(i + plate.size() - 1) % plate.size()];
    const PlatePoint b = plate[i];
    const PlatePoint c = plate[(i + 1) % plate.size()];
    return (a.v == b.v && b.v == c.v) || (a.u == b.u && b.u == c.u);
  };
  for (std::size_t i = 0; i < plate.size();) {
    if (plate.size() > 3 && between_like(i)) {
      plate.erase(plate.begin() + static_cast<std::ptrdiff_t>(i));
    } else {
      ++i;
    }
  }
}

}  // namespace

PlateChain rib_edge(const std::vector<PlateOutline>& held, const RibLimits& limits) {
  if (held.empty()) return {};
  PlateOutline plate = covered_plate(held, limits);
  if (plate.empty()) return {};
  const double radius = std::max(limits.inside_radius_mm, limits.margin_mm / 2) + fit_within(limits);
  std::vector<PlateOutline> pads;
  for (const HeightRange heights : limits.pads) {
    const PlateOutline block = pad_block(plate, heights, radius, limits.margin_mm / 2);
    if (!block.empty()) pads.push_back(block);
  }
  std::vector<PlateOutline> parts = pads;
  parts.push_back(plate);
  plate = thinned(rounded_inside(united(parts), radius), kThinned_mm / 30);
  straighten(plate, {limits.low_v_mm, limits.high_v_mm}, pads);
  FitRules rules;
  rules.within_mm = fit_within(limits);
  rules.least_right_radius_mm = std::max(limits.inside_radius_mm, limits.margin_mm / 2);
  rules.least_step_mm = kLeastStep_mm;
  rules.right_corner_deg = kInsideTurn_deg;
  rules.keeps_edge = [&](PlatePoint a, PlatePoint b) {
    if (a.v == b.v && (a.v == limits.low_v_mm || a.v == limits.high_v_mm)) return true;
    return std::any_of(pads.begin(), pads.end(),
                       [&](const PlateOutline& pad) { return a.u == pad[1].u && b.u == pad[1].u; });
  };
  return fitted_chain(plate, rules);
}

}  // namespace prismwright
