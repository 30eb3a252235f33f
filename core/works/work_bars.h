#pragma once

#include <span>
#include <vector>

#include "core/works/work_hours.h"

namespace prismwright {

/// The course of the work that is left, as the rules of work_plan have it: bars of the steps that have
/// something left, in the order of the work. `hours_a_week` above 0.
std::vector<WorkBar> work_bars(std::span<const StepHours> steps, double hours_a_week);

}  // namespace prismwright
