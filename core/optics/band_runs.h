#pragma once

#include <vector>

#include "core/base/outcome.h"
#include "core/optics/refracting_zone.h"
#include "core/optics/section.h"

namespace prismwright {

inline constexpr int kMostRefractingZones = 60;

/// Lower and upper elevation of one refracting zone, radians; the centre begins at 0.
struct ZoneLimits {
  double from = 0;
  double to = 0;
  bool locked = false;
};

/// Where the next ring starts above a joint at elevation `joint`, with the setting gap.
double start_above(const RefractingBand& band, double joint, double gap_mm);
/// The joint below a ring that starts there.
double joint_below(const RefractingBand& band, double start, double gap_mm);

/// Divides what lies between locked zones, from the axis to `end`, by the rule of the band. Refuses a rule that
/// would need too many zones, or a count too small for the locked ones and the runs between them.
Outcome<std::vector<ZoneLimits>> divide_refracting(const RefractingBand& band, const SectionSettings& settings,
                                                   double end, const std::vector<ZoneLimits>& locked);

}  // namespace prismwright
