#pragma once

#include <string>

#include "core/base/outcome.h"
#include "core/drawing/house_words.h"
#include "core/lens/plan.h"
#include "core/works/works_reckoning.h"

namespace prismwright {

/// What the maker says of an offer; everything else is the works page's.
struct EstimateChoice {
  static constexpr double kMostMargin_percent = 500;
  static constexpr int kMostDays = 3650;
  static constexpr int kMostSets = 20;

  double margin_percent = 0;  ///< upon the reckoned cost, from 0
  int valid_days = 60;        ///< from the date, from 1
  int spare_sets = 1;         ///< of the optional spares: one casting of every kind each, from 0
  std::string note;           ///< in the maker's own words

  bool operator==(const EstimateChoice&) const = default;
};

/// An offer: what is offered (lens, panels, prisms, frame), the money line by line as lens_costs has it
/// (material, hours by step), hours and days of the plan with start and finish, margin, total; options with
/// their prices (spare castings by kind and in sets, moulds handed over); what is not in it. All numbers are
/// those of the works page. Refused: choices out of range; an estimate whose costs are all nought (code
/// "costs": enter works.* first).
Outcome<Drawing> estimate(const LensPlan& plan, const WorksReckoning& works, const EstimateChoice& choice,
                          const HouseWords& words);

}  // namespace prismwright
