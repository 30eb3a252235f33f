#pragma once

#include <optional>

#include "core/frame/plate_polygons.h"
#include "geometry/room_field.h"

namespace prismwright {

/// The least distance between two regions of a plane and where it is.
struct SectionGap {
  double gap_mm = 0;
  PlatePoint first;
  PlatePoint second;
};

/// Two polygons that lie apart are nearest at a corner of one of them. Blank where the regions meet or overlap.
std::optional<SectionGap> section_gap(const PlateRegion& first, const RegionField& first_field,
                                      const PlateRegion& second, const RegionField& second_field);

}  // namespace prismwright
