#pragma once

#include "core/works/works_reckoning.h"
#include "ui/models/cell_table.h"

namespace prismwright {

/// Planned fillings of the vessel, a row for each; a row speaks of the masters in it.
CellSheet loads_sheet(const WorksReckoning& works, bool inches);
/// "12 loads for 276 castings; no plan can have fewer than 9", and what fits in no load.
QString loads_words(const WorksReckoning& works);

/// What is poured in one load: "3 x U07, 2 x R4a".
QString contents_words(const WorksReckoning& works, std::size_t load);
/// Steps of its cure and annealing, a line each, and the notes after them.
QStringList cure_words(const CurePlan& cure);

/// Loads that were made, newest first.
CellSheet made_loads_sheet(const Lensbook& book);

}  // namespace prismwright
