#include "geometry/facing_flats.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include <ElSLib.hxx>

namespace prismwright {
namespace {

constexpr double kParallel = 1e-9;
constexpr double kTouch_mm = 2e-5;  // outlines are kept to 1e-5 mm
constexpr int kMostTries = 4000;

PlatePoint in_plane(const gp_Pln& plane, const gp_Pnt& p) {
  PlatePoint at;
  ElSLib::Parameters(plane, p, at.u, at.v);
  return at;
}

std::vector<PlatePoint> corners_of(const CapFace& cap) {
  std::vector<PlatePoint> corners;
  for (const PlateOutline& outline : cap.outlines)
    corners.insert(corners.end(), outline.begin(), outline.end());
  return corners;
}

// A place of the first cap that the second covers: halfway between two of its corners, or at a corner.
std::optional<gp_Pnt> common_place(const CapFace& first, const CapFace& second, const gp_Trsf& to_second) {
  const std::vector<PlatePoint> corners = corners_of(first);
  const std::size_t count = corners.size();
  if (count == 0) return std::nullopt;
  const std::size_t stride = std::max<std::size_t>(1, count / 60);
  int tries = 0;
  for (std::size_t apart = 0; apart <= count / 2; apart += stride) {
    for (std::size_t i = 0; i < count && tries < kMostTries; i += stride, ++tries) {
      const PlatePoint a = corners[i];
      const PlatePoint b = corners[(i + apart) % count];
      const PlatePoint p{(a.u + b.u) / 2, (a.v + b.v) / 2};
      if (apart > 0 && !first.field.holds(p)) continue;
      const gp_Pnt on = ElSLib::Value(p.u, p.v, first.plane);
      if (second.field.holds(in_plane(second.plane, on.Transformed(to_second)))) return on;
    }
  }
  return std::nullopt;
}

double in_front_mm(const SolidForm& behind, const SolidForm& solid, const gp_Trsf& place) {
  double most = 0;
  for (const CapFace& cap : behind.caps()) {
    const gp_Vec out(cap.plane.Axis().Direction());
    double least = std::numeric_limits<double>::max();
    for (const gp_Pnt& p : solid.samples()) {
      least = std::min(least, gp_Vec(cap.plane.Location(), p.Transformed(place)).Dot(out));
      if (least <= most) break;
    }
    most = std::max(most, least - solid.samples_slack_mm());
  }
  return most;
}

}  // namespace

double parted_by_flats_mm(const SolidForm& first, const SolidForm& second, const gp_Trsf& place) {
  return std::max(in_front_mm(first, second, place), in_front_mm(second, first, place.Inverted()));
}

FacingFlats facing_flats(const SolidForm& first, const SolidForm& second, const gp_Trsf& place) {
  FacingFlats found;
  for (const CapFace& a : first.caps()) {
    const gp_Dir out = a.plane.Axis().Direction();
    for (const CapFace& b : second.caps()) {
      const gp_Dir other = b.plane.Axis().Direction().Transformed(place);
      if (gp_Vec(out).Crossed(gp_Vec(other)).Magnitude() > kParallel || out.Dot(other) > 0) continue;
      const gp_Pnt there = b.plane.Location().Transformed(place);
      const double apart = gp_Vec(a.plane.Location(), there).Dot(gp_Vec(out));
      if (apart < -kTouch_mm) continue;
      found.least_mm = std::max(found.least_mm, apart);
      const gp_Trsf back = place.Inverted();
      std::optional<gp_Pnt> on_first = common_place(a, b, back);
      if (!on_first) {
        if (const auto on_second = common_place(b, a, place)) {
          const gp_Pnt p = on_second->Transformed(place);
          on_first = p.Translated(gp_Vec(out) * -apart);
        }
      }
      if (!on_first) continue;
      const double gap = std::max(0.0, apart < kTouch_mm ? 0.0 : apart);
      found.gap = SolidGap{gap, 0, *on_first, on_first->Translated(gp_Vec(out) * gap)};
      return found;
    }
  }
  return found;
}

}  // namespace prismwright
