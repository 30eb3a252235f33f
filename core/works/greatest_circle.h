#pragma once

#include <vector>

#include "core/optics/profile.h"

namespace prismwright {

/// The section as a closed polygon, anticlockwise, curves within `chord_mm`: the profile; a centre that is
/// closed by its axis comes with its mirror image, as the whole that it is.
std::vector<SectionPoint> whole_section(const Profile& profile, double chord_mm);

/// Greatest circle inside a simple polygon, its diameter bounded from both sides to `within_mm`: squares are
/// halved, the most promising first, until none can hold the centre of a greater one.
struct InnerCircle {
  SectionPoint centre;
  double diameter_mm = 0;
};
InnerCircle greatest_circle(const std::vector<SectionPoint>& polygon, double within_mm = 5e-4);

}  // namespace prismwright
