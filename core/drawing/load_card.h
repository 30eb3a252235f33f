#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "core/drawing/drawing.h"
#include "core/works/cure_plan.h"
#include "core/works/load_plan.h"

namespace prismwright {

/// What the caller says of a load card; everything else comes from the plan.
struct LoadCardWords {
  std::string title;  ///< of the lens
  std::string date;   ///< YYYY-MM-DD
  Paper paper = Paper::a4;
};

/// A card to print and fill in for one load: masses to weigh out, moulds and their places in the vessel drawn
/// shelf by shelf, steps with their times, blanks for lot, hands and hours, the cautions. `pieces` is the list
/// that was planned; `load` counts from 0 and must be in the plan. As many sheets as it takes.
Drawing load_card(const LoadPlan& plan, std::size_t load, const std::vector<LoadPiece>& pieces,
                  const WorksSettings& works, const LoadCardWords& words);

}  // namespace prismwright
