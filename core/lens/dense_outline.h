#pragma once

#include <vector>

#include "core/optics/profile.h"

namespace prismwright {

/// The profile as a closed polygon (first point not repeated), chords within `chord_mm` of its curves and no
/// longer than `longest_mm`.
std::vector<SectionPoint> dense_outline(const Profile& profile, double chord_mm, double longest_mm);

}  // namespace prismwright
