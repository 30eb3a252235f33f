#pragma once

#include <string>

#include "core/optics/profile.h"

namespace prismwright {

/// The face in words of a drawing: "upper joint", "exit", "land".
std::string words_of(FaceRole role);

/// Whether a face is ground and polished for the light.
bool is_optical(FaceRole role);

}  // namespace prismwright
