#pragma once

#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/optics/section.h"

namespace prismwright {

/// The refracting band in its own frame: focal point at the origin, inner face upright at the focal distance.
struct BandTask {
  SectionInput input;
  double aim = 0;   ///< depression of the beam that is put into the outer faces, radians
  double tilt = 0;  ///< by how much the whole band is turned down afterwards: elevations that the maker gives
                    ///< and sees are less by this, radians
};

struct SolvedBand {
  std::vector<Zone> zones;
  std::vector<std::string> notes;
};

/// The centre, then the rings outward (their images above the focal plane).
///
/// With margins given, or by hand, each zone ends where it is told; else the band is divided by its rule, round
/// locked zones: by thickness into as few zones as keep within edge + growth, all equally thick; by count, area
/// or height into so many. With a setting gap g the next ring starts where its lower inner corner stands g away
/// from the joint below, measured square to the joint. Zones keep elevations of the band's frame.
Outcome<SolvedBand> solve_band(const BandTask& task);

}  // namespace prismwright
