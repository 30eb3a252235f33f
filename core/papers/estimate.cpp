#include "core/papers/estimate.h"

#include <fmt/format.h>

#include <cmath>

#include "core/papers/document_pages.h"
#include "core/papers/estimate_parts.h"

namespace prismwright {

namespace {

Done check(const EstimateChoice& choice) {
  if (!std::isfinite(choice.margin_percent) || choice.margin_percent < 0 ||
      choice.margin_percent > EstimateChoice::kMostMargin_percent)
    return request_problem(
        "margin", "margin_percent",
        fmt::format("A margin of {:g} % is asked for, which is not from 0 to {:g}. Give a margin in "
                    "percent upon the reckoned cost.",
                    choice.margin_percent, EstimateChoice::kMostMargin_percent));
  if (choice.valid_days < 1 || choice.valid_days > EstimateChoice::kMostDays)
    return request_problem(
        "valid_days", "valid_days",
        fmt::format("The offer is to hold for {} days, which is not from 1 to {}. Give a number of "
                    "days from its date.",
                    choice.valid_days, EstimateChoice::kMostDays));
  if (choice.spare_sets < 0 || choice.spare_sets > EstimateChoice::kMostSets)
    return request_problem(
        "spare_sets", "spare_sets",
        fmt::format("{} sets of spares are asked for, which is not from 0 to {}. Give a number of "
                    "sets, one casting of every kind each.",
                    choice.spare_sets, EstimateChoice::kMostSets));
  return {};
}

}  // namespace

Outcome<Drawing> estimate(const LensPlan& plan, const WorksReckoning& works, const EstimateChoice& choice,
                          const HouseWords& words) {
  if (const Done checked = check(choice); !checked) return checked.problem();
  if (!(Money::printed(works.costs.total).count() > 0))
    return request_problem(
        "costs", "works.hour_cost",
        "The cost of the whole lens comes to 0.00, so there is nothing to offer it for. Enter what an "
        "hour and the material cost (works.hour_cost, works.resin_cost_per_kg and the others) first.");
  DocumentPages pages(document_paper(words));
  const EstimateFacts facts = estimate_facts(plan, works, choice);
  write_offer(pages, plan, works, facts, choice, words);
  write_money(pages, works, facts, choice);
  write_hours(pages, works, facts);
  write_options(pages, facts);
  write_not_in_it(pages, plan, works, choice);
  return pages.finished("Estimate", words);
}

}  // namespace prismwright
