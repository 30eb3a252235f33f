#include "core/frame/plate_chain.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/angle.h"
#include "core/frame/plate_step.h"

namespace prismwright {
namespace {

// Fitted steps meet within a degree; what turns by more is a corner.
constexpr double kSharp_rad = radians(1.5);

}  // namespace

PlateChain straight_chain(const PlateOutline& outline) {
  PlateChain chain;
  chain.reserve(outline.size());
  for (std::size_t i = 0; i < outline.size(); ++i) {
    chain.push_back(straight_step(outline[i], outline[(i + 1) % outline.size()]));
  }
  return chain;
}

PlateChain circle_chain(PlatePoint centre, double radius_mm) {
  const PlatePoint right{centre.u + radius_mm, centre.v};
  const PlatePoint left{centre.u - radius_mm, centre.v};
  return {{right, left, kPi, centre, radius_mm}, {left, right, kPi, centre, radius_mm}};
}

PlateOutline flattened(const PlateChain& chain, double chord_mm) {
  PlateOutline outline;
  for (const PlateStep& step : chain) {
    outline.push_back(step.from);
    if (step.straight()) continue;
    const double share = std::clamp(1 - chord_mm / step.radius_mm, 0.0, 1.0);
    const double each = std::max(2 * std::acos(share), 1e-4);
    const int count = std::max(1, static_cast<int>(std::ceil(std::abs(step.turn) / each)));
    for (int i = 1; i < count; ++i) outline.push_back(place_along(step, static_cast<double>(i) / count));
  }
  return outline;
}

double signed_area_mm2(const PlateChain& chain) {
  double twice = 0;
  for (const PlateStep& step : chain) {
    twice += step.from.u * step.to.v - step.to.u * step.from.v;
    if (!step.straight()) twice += step.radius_mm * step.radius_mm * (step.turn - std::sin(step.turn));
  }
  return twice / 2;
}

double length_mm(const PlateChain& chain) {
  double length = 0;
  for (const PlateStep& step : chain) length += length_mm(step);
  return length;
}

PlateChain mirrored(const PlateChain& chain) {
  PlateChain mirror;
  mirror.reserve(chain.size());
  const auto image = [](PlatePoint p) { return PlatePoint{-p.u, p.v}; };
  // The mirror turns every arc over, the way back turns it over again.
  for (auto step = chain.rbegin(); step != chain.rend(); ++step) {
    mirror.push_back({image(step->to), image(step->from), step->turn, image(step->centre), step->radius_mm});
  }
  return mirror;
}

PlateChain moved(const PlateChain& chain, double turn_rad, PlatePoint shift) {
  const auto place = [&](PlatePoint p) { return shift + turned(p - PlatePoint{}, turn_rad); };
  PlateChain there;
  there.reserve(chain.size());
  for (const PlateStep& step : chain) {
    there.push_back({place(step.from), place(step.to), step.turn,
                     step.straight() ? PlatePoint{} : place(step.centre), step.radius_mm});
  }
  return there;
}

double least_inside_radius_mm(const PlateChain& chain, CutSide side) {
  const double hand = side == CutSide::inside_of_chain ? 1 : -1;
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < chain.size(); ++i) {
    const PlateStep& step = chain[i];
    const PlateStep& next = chain[(i + 1) % chain.size()];
    if (hand * step.turn > 0) least = std::min(least, step.radius_mm);
    if (hand * turn_between(heading_at_end(step), heading_at_start(next)) > kSharp_rad) return 0;
  }
  return least;
}

}  // namespace prismwright
