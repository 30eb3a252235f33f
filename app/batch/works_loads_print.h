#pragma once

#include <ostream>
#include <string>
#include <vector>

#include "app/batch/json_print.h"
#include "core/works/cure_plan.h"
#include "core/works/load_plan.h"

namespace prismwright {

/// Planned loads with their cures, as they are printed.
struct LoadsAnswer {
  const LoadPlan& plan;
  const std::vector<LoadPiece>& pieces;
  const std::vector<CurePlan>& cures;  ///< one for each load
  const WorksSettings& works;

  /// Everything fits in the vessel, and what its plate says was entered.
  [[nodiscard]] bool well() const {
    return plan.unfit.empty() && works.vessel_max_bar.has_value() && works.vessel_max_c.has_value();
  }
};

void print_loads(const LoadsAnswer& answer, bool steps, std::ostream& out);
Json loads_json(const LoadsAnswer& answer);
/// One line for each kind of casting in each load: load, master, castings, then the load's own figures.
std::string loads_csv(const LoadsAnswer& answer);

}  // namespace prismwright
