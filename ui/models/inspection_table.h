#pragma once

#include "core/works/inspection.h"
#include "ui/models/cell_table.h"

namespace prismwright {

/// Every prism with how its inspection stands; a row speaks of one prism.
CellSheet inspected_sheet(const std::vector<InspectedPrism>& prisms);
/// Everything to measure on one prism, drawn against measured. Row i is the i-th feature.
CellSheet features_sheet(const InspectedPrism& prism, bool inches);
QString inspection_words(const std::vector<InspectedPrism>& prisms);

}  // namespace prismwright
