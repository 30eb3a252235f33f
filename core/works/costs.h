#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/works/work_plan.h"

namespace prismwright {

/// A kind of cost for the whole lens.
struct CostLine {
  std::string item;  ///< "resin", "tooling", "printing", "brass", "hours"
  double quantity = 0;
  std::string unit;  ///< "kg", "l", "h"
  double unit_cost = 0;
  double cost = 0;
};

/// Estimate beside what was entered, by step.
struct StepCost {
  WorkStep step = WorkStep::master;
  double hours = 0;         ///< estimated for the whole lens
  double material = 0;      ///< money
  double money = 0;         ///< hours at works.hour_cost, and material
  double spent_hours = 0;   ///< entered
  double spent_money = 0;   ///< entered as money; hours are not in it
  double actual_money = 0;  ///< spent_money, and spent_hours at works.hour_cost
};

struct Costs {
  std::string currency;
  std::vector<CostLine> lines;
  std::vector<StepCost> steps;  ///< one for each of kWorkSteps
  StepCost other;               ///< entries whose step is none of the plan's words
  double total = 0;             ///< estimate of the whole lens
  double actual_total = 0;
  std::vector<std::string> notes;  ///< sentences on what was guessed
};

/// Money for the whole lens from its first master, scrap too: initiator and tint are reckoned as resin, by
/// mass. Resin is what is poured: volume, scrap and works.resin_head_percent. All lines are in works.currency.
Costs lens_costs(const LensPlan& plan, const MakeList& list, const WorkPlan& work, const WorkInputs& inputs);

/// Columns: step, hours, material, money, spent_hours, spent_money, actual_money, with lines for other entries
/// and the total; then item, quantity, unit, unit_cost, cost_<currency> in a table of its own below a blank
/// line.
std::string costs_csv(const Costs& costs);

}  // namespace prismwright
