#pragma once

#include <optional>

#include "geometry/room_field.h"

namespace prismwright {

/// The least distance between two regions of a plane and where it is.
struct SectionGap {
  double gap_mm = 0;
  PlatePoint first;
  PlatePoint second;
};

/// Two regions that lie apart are nearest at a line or arc of each. Blank where they meet or one holds the
/// other.
std::optional<SectionGap> section_gap(const RegionField& first, const RegionField& second);

}  // namespace prismwright
