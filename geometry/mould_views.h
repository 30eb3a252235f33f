#pragma once

#include "core/base/outcome.h"
#include "core/works/mould_picture.h"
#include "geometry/mould.h"

namespace prismwright {

/// The master of an order seen from the two sides, of sixteen looked at, that show most of what is undercut by
/// `draw`, which was judged of it with `draft_deg`: under that a face counts as steep. From the sea above and
/// from the lamp below where nothing is undercut; where one side shows all there is, the other is opposite.
/// Patches count the undercuts as `draw` does. Refused: a master that cannot be divided; one on which other
/// faces are undercut than `draw` has.
Outcome<MouldPicture> mould_picture(const MouldOrder& order, const DrawFacts& draw, double draft_deg);

/// How finely the skin of a master is divided when its mould is judged, mm.
double mould_chord_mm(const PlannedPrism& prism);

}  // namespace prismwright
