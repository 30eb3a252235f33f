#pragma once

#include <QString>

#include "geometry/door_sweep.h"

namespace prismwright {

/// The step of the sweep that is nearest to this angle; null where the sweep has none, or where the angle lies
/// beyond what is free.
const DoorStep* door_step_at(const DoorSweep& sweep, double angle_deg);

/// "gap 0.62 mm, P03-rib-left to P04-rib-right; free to 104.5°", or what stops the door before that angle.
QString door_words(const DoorSweep& sweep, double angle_deg, bool inches);

/// "104.5°, asked for 90°".
QString door_free_words(const DoorSweep& sweep, double wanted_deg);

}  // namespace prismwright
