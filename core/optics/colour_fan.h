#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/optics/section.h"

namespace prismwright {

/// The lines by which a medium's dispersion is told: blue F and red C of hydrogen, yellow d of helium.
inline constexpr double kLineF_nm = 486.1;
inline constexpr double kLineD_nm = 587.6;
inline constexpr double kLineC_nm = 656.3;

/// One number for each of the lines.
template <class Number>
struct OfLines {
  Number f;
  Number d;
  Number c;
};

/// Departure from the aim, degrees, up positive; blank where light of that colour does not come the zone's own
/// way.
using ColourDepartures = OfLines<std::optional<double>>;

/// The colour fan of one zone: the rays at its middle, and at the lowest and highest elevation that come its
/// own way in the light that the section was worked out for.
struct ZoneColours {
  std::string mark;
  ColourDepartures low;
  ColourDepartures middle;
  ColourDepartures high;
};

/// The colour fan of every zone, in the section's order, for the given indices at F, d and C. A ring stands for
/// its image too.
std::vector<ZoneColours> colour_fan(const Section& section, const OfLines<double>& index);

}  // namespace prismwright
