#pragma once

#include "core/works/works_reckoning.h"
#include "ui/models/cell_table.h"

namespace prismwright {

/// Steps of the work: hours, days and money, estimate beside actual; a row for each step and one for the whole.
CellSheet steps_sheet(const WorksReckoning& works);
/// Material, hours and their cost.
CellSheet costs_sheet(const Costs& costs);
/// "Finished on 14 Jun 2027 when work starts on 26 Nov 2026; 812 hours of hands left.", or "Not ready before"
/// where castings fit no load of the vessel, and the notes of plan and costs.
QString plan_words(const WorksReckoning& works);
QString step_words(WorkStep step);
QString day_words(std::chrono::sys_days day);

}  // namespace prismwright
