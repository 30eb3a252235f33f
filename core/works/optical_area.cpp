#include "core/works/optical_area.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/lens/trimmed_ring.h"
#include "core/lens/turned_face.h"
#include "core/optics/face_words.h"

namespace prismwright {
namespace {

constexpr double kChord_mm = 0.002;
constexpr double kLongest_mm = 0.25;

double angle_of(const std::vector<TrimmedRing::Span>& spans) {
  double sum = 0;
  for (const auto& span : spans) sum += span.to - span.from;
  return sum;
}

/// Length of the circle through a place of the profile that the trim leaves.
double arc_left_mm(const TrimmedRing& ring, SectionPoint p) {
  const double off = turned(p, ring.turning()).off;
  const Half half = ring.trim().half;
  if (ring.turning() == TurningAxis::lens || half != Half::whole) return off * angle_of(ring.spans(p, half));
  return off * (angle_of(ring.spans(p, Half::upper)) + angle_of(ring.spans(p, Half::lower)));
}

double turned_area_mm2(const TrimmedRing& ring, const Face& face) {
  const auto points = points_along(face, kChord_mm);
  double area = 0;
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    const double length = distance(points[i], points[i + 1]);
    const int pieces = std::max(1, static_cast<int>(std::ceil(length / kLongest_mm)));
    for (int k = 0; k < pieces; ++k)
      area += arc_left_mm(ring, between(points[i], points[i + 1], (k + 0.5) / pieces)) * length / pieces;
  }
  return area;
}

/// How high the profile is at a distance from the lens axis.
double height_at_mm(const std::vector<SectionPoint>& outline, double r) {
  std::vector<double> crossings;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const SectionPoint p = outline[i];
    const SectionPoint q = outline[(i + 1) % outline.size()];
    if ((p.r <= r) == (q.r <= r)) continue;
    crossings.push_back(p.z + (q.z - p.z) * (r - p.r) / (q.r - p.r));
  }
  std::sort(crossings.begin(), crossings.end());
  double height = 0;
  for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) height += crossings[i + 1] - crossings[i];
  return height;
}

/// A flat upright face stands at x = f; its place y lies hypot(f, y) from the lens axis.
double flat_inner_mm2(const TrimmedRing& ring) {
  const auto ends = ring.facet_ends();
  if (!ends) return 0;
  const double f = *ring.trim().flat_inner_mm;
  const auto outline = polygon_of(ring.profile(), kChord_mm);
  double farthest = f;
  for (const SectionPoint p : outline) farthest = std::max(farthest, p.r);
  const double reach = std::sqrt(farthest * farthest - f * f);
  const double from = std::max(-ends->clockwise_mm, -reach);
  const double to = std::min(ends->anticlockwise_mm, reach);
  if (from >= to) return 0;
  const int strips = std::max(16, static_cast<int>(std::ceil((to - from) / kLongest_mm)));
  double area = 0;
  for (int i = 0; i < strips; ++i)
    area += height_at_mm(outline, std::hypot(f, from + (to - from) * (i + 0.5) / strips));
  return area * (to - from) / strips;
}

}  // namespace

double optical_area_mm2(const PlannedPrism& prism) {
  const TrimmedRing ring(prism);
  double area = flat_inner_mm2(ring);
  for (const Face& face : ring.profile().faces) {
    if (is_optical(face.role)) area += turned_area_mm2(ring, face);
  }
  return area;
}

}  // namespace prismwright
