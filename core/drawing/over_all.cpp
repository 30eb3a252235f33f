#include "core/drawing/over_all.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "core/lens/dense_outline.h"
#include "core/lens/lens_size.h"
#include "core/lens/trimmed_ring.h"

namespace prismwright {

namespace {

constexpr double kChord_mm = 0.01;
constexpr double kLongest_mm = 0.25;  ///< step along an outline

/// Greatest distance from the lens axis of what is kept of the edge that a place of a profile makes: at the
/// ends of it, which lie farthest from the panel's axis.
double radius_of(const TrimmedRing& ring, SectionPoint p) {
  double radius = 0;
  for (const Half side : {Half::upper, Half::lower}) {
    if (ring.trim().half != Half::whole && ring.trim().half != side) continue;
    for (const TrimmedRing::Span& span : ring.spans(p, side)) {
      for (const double angle : {span.from, span.to}) {
        const double up = (side == Half::lower ? -1 : 1) * p.z * std::sin(angle);
        const double out = p.r * std::cos(ring.dip()) + up * std::sin(ring.dip());
        radius = std::max(radius, std::hypot(out, p.z * std::cos(angle)));
      }
    }
  }
  return radius;
}

double radius_of(const PlannedPrism& prism) {
  double radius = 0;
  if (prism.turning == TurningAxis::lens) {
    for (const SectionPoint p : polygon_of(prism.profile, kChord_mm)) radius = std::max(radius, p.r);
    return radius;
  }
  const TrimmedRing ring(prism);
  for (const SectionPoint p : dense_outline(ring.profile(), kChord_mm, kLongest_mm))
    radius = std::max(radius, radius_of(ring, p));
  return radius;
}

void take(OverAll& all, SpacePoint place, double around_axis = 0, double upright = 0) {
  all.radius_mm = std::max(all.radius_mm, std::hypot(place.x, place.y) + around_axis);
  all.low_z = std::min(all.low_z, place.z - upright);
  all.high_z = std::max(all.high_z, place.z + upright);
}

void take(OverAll& all, const FlatPart& part) {
  for (const PlatePoint p : flattened(part.outline, kChord_mm)) {
    for (const double depth : {0.0, part.thickness_mm})
      take(all, part.place.out_of(SpacePoint{p.u, p.v, depth}));
  }
}

/// A round part by its two ends, each a disc square to it.
void take(OverAll& all, const RoundPart& part) {
  const double radius = std::max(part.diameter_mm, part.head_mm) / 2;
  const double upright = radius * std::sqrt(std::max(0.0, 1 - part.along.z * part.along.z));
  for (const SpacePoint end : {part.from, part.from + part.length_mm * part.along}) {
    const double off = std::hypot(end.x, end.y);
    const double outward = off > 0 ? (part.along.x * end.x + part.along.y * end.y) / off : 0;
    take(all, end, radius * std::sqrt(std::max(0.0, 1 - outward * outward)), upright);
  }
}

}  // namespace

OverAll glass_over_all(const LensPlan& plan) {
  const LensSize size = size_of(plan);
  OverAll all{0, size.lowest_mm, size.highest_mm};
  std::set<std::string> known;
  for (const PlannedPrism& prism : plan.prisms) {
    if (known.insert(prism.shape_key).second) all.radius_mm = std::max(all.radius_mm, radius_of(prism));
  }
  return all;
}

OverAll frame_over_all(const FramePlan& frame) {
  OverAll all;
  for (const FlatPart& part : frame.flats) take(all, part);
  for (const RoundPart& part : frame.rounds) take(all, part);
  return all;
}

}  // namespace prismwright
