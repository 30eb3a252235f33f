#pragma once

#include <string>
#include <utility>
#include <vector>

#include "geometry/despatch/lens_shop.h"

namespace prismwright {

/// Caption and words of the figures that the start page of a pack gives.
using Figures = std::vector<std::pair<std::string, std::string>>;

/// What the words of a figure begin with when something is amiss; a pack that says so is not well.
inline constexpr const char* kNotWell = "not well:";

/// Of the lens: order, focal distance, panels, prisms, masses, proof, clearances. Takes no time where solids
/// and clearances stand.
Figures lens_figures(LensShop& shop);
Figures light_figures(const LightReport& light);

}  // namespace prismwright
