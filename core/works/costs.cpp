#include "core/works/costs.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/base/csv_cell.h"
#include "core/works/work_hours.h"

namespace prismwright {
namespace {

/// Material of the whole lens.
struct Materials {
  double resin_kg = 0;
  double tooling_l = 0;
  double printing_kg = 0;
};

Materials material_of(const WorksSettings& works, const MakeList& list, const WorkInputs& inputs) {
  Materials sum;
  const double syrup_kg_per_mm3 = works.resin_density_g_cm3 * 1e-6 * (1 + works.resin_head_percent / 100) *
                                  (1 + (works.initiator_percent + works.tint_percent) / 100);
  for (const MakeRow& row : list.rows) {
    sum.resin_kg += whole_castings(row, works) * row.volume_mm3 * syrup_kg_per_mm3;
    sum.tooling_l += whole_moulds(row, works) * tooling_cm3(row, inputs) / 1000;
    sum.printing_kg += print_cm3(row, inputs) * works.print_density_g_cm3 / 1000;
  }
  return sum;
}

CostLine line(const char* item, double quantity, const char* unit, double unit_cost) {
  return {item, quantity, unit, unit_cost, quantity * unit_cost};
}

double material_of_step(WorkStep step, const std::vector<CostLine>& lines) {
  const char* item = step == WorkStep::master  ? "printing"
                     : step == WorkStep::mould ? "tooling"
                     : step == WorkStep::cast  ? "resin"
                     : step == WorkStep::frame ? "brass"
                                               : "";
  for (const CostLine& cost : lines) {
    if (cost.item == item) return cost.cost;
  }
  return 0;
}

void add_spendings(Costs& costs, std::span<const Spending> spendings, double hour_cost) {
  for (const Spending& entry : spendings) {
    const auto step = find_work_step(entry.step);
    StepCost& place = step ? costs.steps[static_cast<std::size_t>(*step)] : costs.other;
    place.spent_hours += entry.hours;
    place.spent_money += entry.money;
    place.actual_money += entry.money + entry.hours * hour_cost;
    costs.actual_total += entry.money + entry.hours * hour_cost;
  }
}

/// Says of how many kinds printing and tooling are no volumes of solids.
std::vector<std::string> guesses(const MakeList& list, const WorkInputs& inputs) {
  const auto guessed = std::ranges::count_if(list.rows, [&](const MakeRow& row) {
    return std::ranges::none_of(inputs.volumes, [&](const PieceVolumes& given) {
      return given.master == row.master && given.tooling_cm3 && given.print_cm3;
    });
  });
  if (guessed == 0) return {};
  return {fmt::format(
      "Printing and tooling are a guess from the prisms' sizes for {} of {} masters and their moulds: those "
      "moulds are not worked out",
      guessed, list.rows.size())};
}

std::string csv_line(std::string_view name, const StepCost& step) {
  return fmt::format("{},{:.2f},{:.2f},{:.2f},{:.2f},{:.2f},{:.2f}\n", name, step.hours, step.material,
                     step.money, step.spent_hours, step.spent_money, step.actual_money);
}

}  // namespace

Costs lens_costs(const LensPlan& plan, const MakeList& list, const WorkPlan& work, const WorkInputs& inputs) {
  const WorksSettings& works = plan.values.works;
  const Materials material = material_of(works, list, inputs);
  double hours = 0;
  for (const StepPlan& step : work.steps) hours += step.hands_h;
  Costs costs;
  costs.currency = works.currency;
  costs.lines = {line("resin", material.resin_kg, "kg", works.resin_cost_per_kg),
                 line("tooling", material.tooling_l, "l", works.tooling_cost_per_l),
                 line("printing", material.printing_kg, "kg", works.print_cost_per_kg),
                 line("brass", inputs.brass_kg, "kg", works.brass_cost_per_kg),
                 line("hours", hours, "h", works.hour_cost)};
  for (const CostLine& cost : costs.lines) costs.total += cost.cost;
  for (const StepPlan& step : work.steps) {
    StepCost cost;
    cost.step = step.step;
    cost.hours = step.hands_h;
    cost.material = material_of_step(step.step, costs.lines);
    cost.money = cost.material + step.hands_h * works.hour_cost;
    costs.steps.push_back(cost);
  }
  add_spendings(costs, inputs.spendings, works.hour_cost);
  costs.notes = guesses(list, inputs);
  return costs;
}

std::string costs_csv(const Costs& costs) {
  std::string text = "step,hours,material,money,spent_hours,spent_money,actual_money\n";
  StepCost total = costs.other;
  for (const StepCost& step : costs.steps) {
    text += csv_line(name_of(step.step), step);
    total.hours += step.hours;
    total.material += step.material;
    total.money += step.money;
    total.spent_hours += step.spent_hours;
    total.spent_money += step.spent_money;
    total.actual_money += step.actual_money;
  }
  text += csv_line("other", costs.other) + csv_line("total", total);
  text += fmt::format("\nitem,quantity,unit,unit_cost,cost_{}\n", csv_cell(costs.currency));
  for (const CostLine& cost : costs.lines)
    text += fmt::format("{},{:.3f},{},{:.2f},{:.2f}\n", cost.item, cost.quantity, cost.unit, cost.unit_cost,
                        cost.cost);
  return text + fmt::format("total,,,,{:.2f}\n", costs.total);
}

}  // namespace prismwright
