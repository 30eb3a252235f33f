#include "core/lens/lens_size.h"

#include <algorithm>
#include <cmath>

namespace prismwright {

LensSize size_of(const LensPlan& plan) {
  LensSize size;
  size.inside_diameter_mm = 2 * plan.values.brief.focal_mm;
  for (const Zone& zone : plan.section.zones) {
    for (const SectionPoint point : polygon_of(zone.profile, 0.01)) {
      size.lowest_mm = std::min(size.lowest_mm, point.z);
      size.highest_mm = std::max(size.highest_mm, point.z);
      // A ring stands for its image below the focal plane too.
      if (zone.kind == ZoneKind::ring) size.lowest_mm = std::min(size.lowest_mm, -point.z);
    }
  }
  size.height_mm = size.highest_mm - size.lowest_mm;
  return size;
}

}  // namespace prismwright
