#pragma once

#include "app/batch/json_print.h"
#include "app/batch/made_lens.h"

namespace prismwright {

/// The answer of `show --json`: brief, material, section, frame, panels, zones, prisms and their totals.
Json lens_json(const MadePrisms& lens);

}  // namespace prismwright
