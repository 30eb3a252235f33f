#pragma once

#include <vector>

#include "core/works/work_plan.h"

namespace prismwright {

/// A step with what the course of work needs to know of it.
struct StepHours {
  StepPlan plan;
  /// Castings (glazing: prisms) that pass through what is left of the step. A step waits for the one before in
  /// the share that this number of the one before has in its own.
  double flow_left = 0;
};

/// Units and hours of every step of kWorkSteps; `loads` are those of the castings to be poured.
std::vector<StepHours> step_hours(const LensPlan& plan, const MakeList& list, const LoadCounts& loads,
                                  const WorkInputs& inputs);

/// Volume that the printer lays for a master, cm3: as given, else the prism's own.
double print_cm3(const MakeRow& row, const WorkInputs& inputs);
/// Tooling material of one mould, cm3: as given, else the row's.
double tooling_cm3(const MakeRow& row, const WorkInputs& inputs);
/// Castings of a row for the whole lens by the make list's rule, from nothing.
int whole_castings(const MakeRow& row, const WorksSettings& works);
/// Moulds of a row for those.
int whole_moulds(const MakeRow& row, const WorksSettings& works);

}  // namespace prismwright
