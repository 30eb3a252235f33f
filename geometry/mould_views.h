#pragma once

#include "core/base/outcome.h"
#include "core/works/mould_picture.h"
#include "geometry/mould.h"

namespace prismwright {

/// The master of an order seen from the two sides, of sixteen looked at, that show most of what is undercut
/// when it is drawn along `along` (a unit vector) and a face counts as steep under `draft_deg`; from the sea
/// above and from the lamp below where nothing is. Undercuts are counted as in judged_draw of the same skin.
/// Refused: a master that cannot be divided.
Outcome<MouldPicture> mould_picture(const MouldOrder& order, SpaceVector along, double draft_deg);

/// How finely the skin of a master is divided when its mould is judged, mm.
double mould_chord_mm(const PlannedPrism& prism);

}  // namespace prismwright
