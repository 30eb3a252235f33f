#include "geometry/greatest_length.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include <Bnd_Box.hxx>
#include <Bnd_OBB.hxx>
#include <TColgp_Array1OfPnt.hxx>

#include "core/lens/trimmed_ring.h"
#include "geometry/convert.h"

namespace prismwright {

namespace {

constexpr double kChord_mm = 0.05;

void spread(const TrimmedRing& ring, SectionPoint p, TrimmedRing::Span span, const gp_Trsf& place,
            std::vector<gp_Pnt>& points) {
  const double reach = ring.turning() == TurningAxis::lens ? p.r : p.z;
  const double step = 2 * std::acos(std::max(0.0, 1 - kChord_mm / std::max(reach, 1.0)));
  const int pieces = std::max(1, static_cast<int>(std::ceil((span.to - span.from) / step)));
  for (int i = 0; i <= pieces; ++i) {
    const double angle = span.from + (span.to - span.from) * i / pieces;
    points.push_back(ProfilePlane(ring.turning(), angle).place(p).Transformed(place));
  }
}

/// The outline, with its own points where a flat inner face begins and ends on the joints.
std::vector<SectionPoint> outline_of(const TrimmedRing& ring) {
  const auto corners = polygon_of(ring.profile(), kChord_mm);
  const auto ends = ring.facet_ends();
  if (!ends) return corners;
  const double f = *ring.trim().flat_inner_mm;
  const double radii[] = {f * (1 + 1e-12), std::hypot(f, ends->clockwise_mm),
                          std::hypot(f, ends->anticlockwise_mm)};
  std::vector<SectionPoint> outline;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const SectionPoint from = corners[i];
    const SectionPoint to = corners[(i + 1) % corners.size()];
    outline.push_back(from);
    for (const double r : radii) {
      if ((from.r - r) * (to.r - r) < 0) outline.push_back(between(from, to, (r - from.r) / (to.r - from.r)));
    }
  }
  return outline;
}

std::vector<gp_Pnt> points_on_skin(const TrimmedRing& ring, const gp_Trsf& place) {
  std::vector<gp_Pnt> points;
  for (const SectionPoint& p : outline_of(ring)) {
    const Half half = ring.trim().half;
    if (half != Half::lower) {
      for (const auto& span : ring.spans(p, Half::upper)) spread(ring, p, span, place, points);
    }
    if (ring.turning() == TurningAxis::lens || half == Half::upper) continue;
    for (const auto& span : ring.spans(p, Half::lower)) {
      spread(ring, p, {-span.to, -span.from}, place, points);
    }
  }
  return points;
}

struct BoxEdges {
  double longest = 0;
  double volume = 0;
};

BoxEdges edges(double a, double b, double c) { return {std::max({a, b, c}), a * b * c}; }

}  // namespace

double greatest_length_mm(const PlannedPrism& prism) {
  const std::vector<gp_Pnt> points = points_on_skin(TrimmedRing(prism), axis_place(prism));
  if (points.empty()) return 0;
  // The kernel counts these points from 0.
  TColgp_Array1OfPnt list(0, static_cast<int>(points.size()) - 1);
  Bnd_Box upright;
  for (std::size_t i = 0; i < points.size(); ++i) {
    list.SetValue(static_cast<int>(i), points[i]);
    upright.Add(points[i]);
  }
  Bnd_OBB tight;
  tight.ReBuild(list, nullptr, Standard_True);
  const BoxEdges turned = edges(2 * tight.XHSize(), 2 * tight.YHSize(), 2 * tight.ZHSize());
  const gp_XYZ size = upright.CornerMax().XYZ() - upright.CornerMin().XYZ();
  const BoxEdges straight = edges(size.X(), size.Y(), size.Z());
  return turned.volume < straight.volume ? turned.longest : straight.longest;
}

}  // namespace prismwright
