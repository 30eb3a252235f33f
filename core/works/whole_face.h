#pragma once

#include <cstddef>

#include "core/optics/profile.h"

namespace prismwright {

/// Whether a face of the profile ends on the turning axis: it is half of what can be measured.
bool ends_on_axis(const Profile& profile, std::size_t index);

/// The face in whole: one that ends on the turning axis goes on as its mirror image (z -> -z), walked the same
/// way; any other as it is.
Face whole_face(const Profile& profile, std::size_t index);

}  // namespace prismwright
