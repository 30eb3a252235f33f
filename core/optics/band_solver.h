#pragma once

#include <vector>

#include "core/base/outcome.h"
#include "core/optics/section.h"

namespace prismwright {

/// The refracting band: the centre, then the rings outward (their images above the focal plane).
///
/// With margins given each zone ends on its margin; else the band is divided so that no zone grows thicker than
/// edge + growth and all are equally thick. With a setting gap g the next ring starts where its lower inner
/// corner stands g away from the joint below, measured square to the joint.
Outcome<std::vector<Zone>> solve_band(const SectionInput& input);

}  // namespace prismwright
