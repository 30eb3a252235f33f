#pragma once

#include <string>
#include <vector>

#include "core/frame/frame_plan.h"
#include "core/optics/profile.h"

namespace prismwright {

/// A level plate as an upright half plane from the lens axis cuts it: a rectangle of the section.
struct CutPlate {
  std::string mark;
  SectionPoint low;
  SectionPoint high;
};

/// Rings, base table, finial plate and rails where the half plane at this azimuth cuts them, in pieces where it
/// runs through a hole. Ribs between bands are left out: the section shows them itself (Section::ribs).
std::vector<CutPlate> cut_plates(const FramePlan& frame, double azimuth_deg);

}  // namespace prismwright
