#pragma once

#include <string>

#include "app/batch/works_desk.h"
#include "core/works/ledger.h"

namespace prismwright {

/// A stage by its name, or a refusal that names them all.
Outcome<Stage> read_stage(const std::string& text);

/// Writes the steps that the request makes into the book, with a new vessel load where one is named, and says
/// what was recorded: stage, numbers of new castings, number of the load.
ExitCode write_steps(WorksDesk& desk, const StepRequest& request, const std::optional<VesselLoad>& new_load,
                     Voice& voice);

}  // namespace prismwright
