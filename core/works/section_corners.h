#pragma once

#include <string>
#include <vector>

#include "core/optics/face_words.h"

namespace prismwright {

/// A corner of a section with the letter that a maker calls it by (core/works/inspection.h says which).
struct SectionCorner {
  std::string letter;  ///< "A", "C2", "M"
  SectionPoint place;
  bool on_axis = false;  ///< not a corner of glass: a centre's middle
};

/// One for each face of the profile: the corner at which it starts. No letter occurs twice.
std::vector<SectionCorner> lettered_corners(const Profile& profile);

/// Angle of the glass at the corner where face `index` starts, degrees, between the tangents of the two faces.
double corner_angle_deg(const Profile& profile, std::size_t index);

}  // namespace prismwright
