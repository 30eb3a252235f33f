#include "geometry/section_gap.h"

#include <limits>

namespace prismwright {
namespace {

constexpr double kCommon_mm2 = 1e-9;

bool boxes_meet(const PlateExtent& a, const PlateExtent& b) {
  return a.low.u <= b.high.u && b.low.u <= a.high.u && a.low.v <= b.high.v && b.low.v <= a.high.v;
}

// The corners of one against the other's boundary; false when a corner lies within it.
bool nearer_at_corners(const PlateRegion& corners, const RegionField& field, bool swapped, SectionGap& best) {
  for (const PlateOutline& outline : corners) {
    for (const PlatePoint p : outline) {
      const RegionField::Hit hit = field.at(p);
      if (hit.distance_mm == 0) return false;
      if (hit.distance_mm >= best.gap_mm) continue;
      best = swapped ? SectionGap{hit.distance_mm, hit.foot, p} : SectionGap{hit.distance_mm, p, hit.foot};
    }
  }
  return true;
}

}  // namespace

std::optional<SectionGap> section_gap(const PlateRegion& first, const RegionField& first_field,
                                      const PlateRegion& second, const RegionField& second_field) {
  SectionGap best{std::numeric_limits<double>::max(), {}, {}};
  if (!nearer_at_corners(first, second_field, false, best)) return std::nullopt;
  if (!nearer_at_corners(second, first_field, true, best)) return std::nullopt;
  // Edges may cross without a corner of one within the other.
  if (boxes_meet(extent_of(first), extent_of(second)) && area_mm2(common_part(first, second)) > kCommon_mm2) {
    return std::nullopt;
  }
  return best;
}

}  // namespace prismwright
