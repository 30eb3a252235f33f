#pragma once

#include <vector>

#include "core/lens/brief.h"
#include "core/optics/colour_fan.h"

namespace prismwright {

/// Whether the index of the material is known to change with the wavelength at all; of a material of one index
/// nothing can be said of colours.
bool disperses(const Material& material);

/// The colour fan of every zone in the lens's own material. Blue and red are blank where it is not known how
/// the material disperses.
std::vector<ZoneColours> zone_colours(const Section& section, const Material& material);

}  // namespace prismwright
