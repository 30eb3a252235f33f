#pragma once

#include "geometry/fit_up.h"
#include "ui/models/cell_table.h"

namespace prismwright {

/// The order in which every panel is put together, a row for each step, what cannot go in before its panel's
/// steps; with what each step asks for in a sentence.
CellSheet fit_sheet(const std::vector<PanelFit>& panels, bool inches);

/// "184 of 184": prisms that can be brought into their seats.
QString fit_words(const std::vector<PanelFit>& panels, const LensPlan& plan);

}  // namespace prismwright
