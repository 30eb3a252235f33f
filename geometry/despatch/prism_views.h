#pragma once

#include "core/base/progress.h"
#include "core/drawing/prism_sheet.h"
#include "geometry/bodies.h"

namespace prismwright {

/// What the solid of a prism tells its sheet. Refused: a solid that cannot be meshed; stopped.
Outcome<PrismSolidFacts> solid_facts(const PlannedPrism& prism, const PrismBody& body,
                                     const Progress& progress = {});

}  // namespace prismwright
