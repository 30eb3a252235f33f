#include "core/optics/ray_meetings.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace prismwright {

namespace {

constexpr double kGrazing = 1e-10;  ///< a ray along a face does not meet it
constexpr double kTouching_mm = 1e-7;

/// Distances at which a ray enters and leaves the slab low..high of one axis.
bool cut_slab(double from, double step, double low, double high, double& enter, double& leave) {
  if (std::abs(step) < 1e-15) return from > low && from < high;
  const double a = (low - from) / step;
  const double b = (high - from) / step;
  enter = std::max(enter, std::min(a, b));
  leave = std::min(leave, std::max(a, b));
  return enter < leave;
}

}  // namespace

std::optional<FoundFace> nearest_face(const PieceCurves& piece, SectionPoint from, SectionDirection ray,
                                      bool entering, const FoundFace* leaving) {
  static thread_local std::vector<FaceHit> hits;
  std::optional<FoundFace> best;
  for (std::size_t i = 0; i < piece.faces.size(); ++i) {
    if (leaving && i == leaving->face &&
        !piece.faces[i].may_meet_again(std::abs(dot(ray, leaving->hit.outward))))
      continue;
    hits.clear();
    piece.faces[i].meet(from, ray, hits);
    for (const FaceHit& hit : hits) {
      const double against = dot(ray, hit.outward);
      if (entering ? against > -kGrazing : against < kGrazing) continue;
      if (hit.along_mm < -kTouching_mm) continue;
      if (!best || hit.along_mm < best->hit.along_mm) best = FoundFace{i, hit};
    }
  }
  return best;
}

RibHit first_rib(const std::vector<SectionRib>& ribs, SectionPoint from, SectionDirection ray) {
  RibHit first;
  for (const SectionRib& rib : ribs) {
    double enter = 0;
    double leave = std::numeric_limits<double>::infinity();
    if (!cut_slab(from.r, ray.r(), rib.low.r, rib.high.r, enter, leave)) continue;
    if (!cut_slab(from.z, ray.z(), rib.low.z, rib.high.z, enter, leave)) continue;
    if (!first.rib || enter < first.along_mm) first = {&rib, enter};
  }
  return first;
}

std::optional<FaceHit> glass_before(const PieceCurves& piece, SectionPoint from, SectionDirection ray) {
  std::optional<FaceHit> first;
  if (piece.ahead.empty()) return first;
  const SectionDirection aim = SectionDirection::at(-piece.aim);
  const SectionOffset place = from - SectionPoint{};
  const double along = dot(place, aim);
  const double across = dot(place, aim.quarter_turn());
  const double slope = cross(aim, ray) / dot(aim, ray);
  for (const GlassAhead& other : piece.ahead) {
    if (other.along_to < along) continue;
    const double near = across + slope * (std::max(other.along_from, along) - along);
    const double far = across + slope * (other.along_to - along);
    if (std::max(near, far) < other.across_from || std::min(near, far) > other.across_to) continue;
    const auto met = nearest_face(*other.piece, from, ray, true);
    if (met && (!first || met->hit.along_mm < first->along_mm)) first = met->hit;
  }
  return first;
}

}  // namespace prismwright
