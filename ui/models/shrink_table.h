#pragma once

#include "core/works/shrink_fit.h"
#include "ui/models/cell_table.h"

namespace prismwright {

/// Factors that readings give, a row for each resin, lot and direction that has any.
CellSheet shrink_sheet(const std::vector<ShrinkFit>& fits);
QString direction_words(ShrinkDirection direction);

}  // namespace prismwright
