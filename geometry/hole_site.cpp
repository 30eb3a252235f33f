#include "geometry/hole_site.h"

#include <algorithm>
#include <limits>

#include "core/base/angle.h"
#include "core/frame/plate_step.h"

namespace prismwright {
namespace {

constexpr double kApart_mm = 1e-4;
constexpr double kThrough_mm = 1e-6;

// The place lies between an arc and its chord: the arc then goes once more round it than the chord does.
bool in_segment(const PlateStep& arc, PlatePoint p) {
  const double side = cross(arc.to - arc.from, p - arc.from);
  return distance(p, arc.centre) < arc.radius_mm && (arc.turn > 0 ? side < 0 : side > 0);
}

double greatest_radius_mm(const PlateHole& hole) {
  return std::max(hole.diameter_mm, hole.sink_diameter_mm) / 2;
}

bool clears_edges(const FlatPart& part, const PlateHole& hole) {
  const double least = greatest_radius_mm(hole) + kApart_mm;
  const auto clears = [&](const PlateChain& chain) { return distance_mm(chain, hole.centre) > least; };
  const auto clears_pocket = [&](const PlatePocket& pocket) { return clears(pocket.outline); };
  return clears(part.outline) && is_within(part.outline, hole.centre) &&
         std::all_of(part.openings.begin(), part.openings.end(), clears) &&
         std::all_of(part.pockets.begin(), part.pockets.end(), clears_pocket);
}

bool clears_holes(const FlatPart& part, const PlateHole& hole) {
  return std::all_of(part.holes.begin(), part.holes.end(), [&](const PlateHole& other) {
    if (&other == &hole) return true;
    const double least = greatest_radius_mm(hole) + greatest_radius_mm(other) + kApart_mm;
    return distance(hole.centre, other.centre) > least;
  });
}

bool in_opening(const FlatPart& part, PlatePoint p) {
  return std::any_of(part.openings.begin(), part.openings.end(),
                     [&](const PlateChain& opening) { return is_within(opening, p); });
}

}  // namespace

HoleSite site_of(const FlatPart& part, const PlateHole& hole) {
  HoleSite site{part.thickness_mm, std::nullopt, true};
  for (std::size_t i = 0; i < part.pockets.size(); ++i) {
    if (!is_within(part.pockets[i].outline, hole.centre)) continue;
    site.pocket = i;
    site.top_mm = part.thickness_mm - part.pockets[i].depth_mm;
  }
  site.clear = site.top_mm > kThrough_mm && !in_opening(part, hole.centre) && clears_edges(part, hole) &&
               clears_holes(part, hole);
  return site;
}

double sink_depth_mm(const PlateHole& hole, double top_mm) {
  return std::clamp((hole.sink_diameter_mm - hole.diameter_mm) / 2, 0.0, top_mm);
}

double distance_mm(const PlateChain& chain, PlatePoint p) {
  double least = std::numeric_limits<double>::infinity();
  for (const PlateStep& step : chain) {
    least = std::min(least, distance_to(step, p));
  }
  return least;
}

bool is_within(const PlateChain& chain, PlatePoint p) {
  double turned = 0;
  for (const PlateStep& step : chain) {
    turned += turn_between(step.from - p, step.to - p);
    if (!step.straight() && in_segment(step, p)) turned += step.turn > 0 ? 2 * kPi : -2 * kPi;
  }
  return turned > kPi;
}

}  // namespace prismwright
