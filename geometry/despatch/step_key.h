#pragma once

#include <string_view>

#include "geometry/despatch/piece_key.h"

namespace prismwright {

/// Raised when step_text (geometry/step_writer.h) or the making of solids comes to give other bytes.
inline constexpr int kStepFormat = 1;

/// The beginning of a key for a STEP file: another version of the kernel may make other solids.
PieceKey step_key(std::string_view what);

}  // namespace prismwright
