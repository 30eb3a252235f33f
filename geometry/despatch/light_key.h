#pragma once

#include <string_view>

#include "geometry/despatch/lens_shop.h"
#include "geometry/despatch/piece_key.h"

namespace prismwright {

/// Raised when light_report (core/light/light_report.h) comes to give other figures.
inline constexpr int kLightFormat = 1;

/// The beginning of a key for what shows the light report: everything that the light is worked out from.
PieceKey light_key(LensShop& shop, std::string_view what);

}  // namespace prismwright
