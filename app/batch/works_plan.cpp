#include <fmt/format.h>

#include <algorithm>

#include "app/batch/json_print.h"
#include "app/batch/text_table.h"
#include "app/batch/works_act.h"
#include "app/batch/works_reckoned.h"

namespace prismwright {

namespace {

Json step_json(const StepPlan& step, const StepCost& cost, const WorkPlan& work) {
  Json json;
  json["step"] = name_of(step.step);
  json["units"] = step.units;
  json["units_left"] = step.units_left;
  json["hands_h"] = step.hands_h;
  json["hands_left_h"] = step.hands_left_h;
  json["machine_left_h"] = step.machine_left_h;
  const auto bar = std::ranges::find(work.bars, step.step, &WorkBar::step);
  json["from_day"] = bar == work.bars.end() ? Json() : Json(bar->from_day);
  json["to_day"] = bar == work.bars.end() ? Json() : Json(bar->to_day);
  json["estimated_material"] = cost.material;
  json["estimated_money"] = cost.money;
  json["spent_h"] = cost.spent_hours;
  json["spent_money"] = cost.spent_money;
  json["actual_money"] = cost.actual_money;
  return json;
}

Json cost_json(const CostLine& line) {
  Json json;
  json["item"] = line.item;
  json["quantity"] = line.quantity;
  json["unit"] = line.unit;
  json["unit_cost"] = line.unit_cost;
  json["cost"] = line.cost;
  return json;
}

Json plan_json(const WorkPlan& work, const Costs& costs) {
  Json json;
  json["start"] = day_text(work.start);
  const std::string finish = day_text(work.finish);
  json["finish"] = work.unplaced > 0 ? Json() : Json(finish);
  json["not_ready_before"] = finish;
  json["unplaced"] = work.unplaced;
  json["days"] = work.days;
  json["hands_left_h"] = work.hands_left_h;
  json["steps"] = Json::array();
  for (std::size_t i = 0; i < work.steps.size(); ++i)
    json["steps"].push_back(step_json(work.steps[i], costs.steps.at(i), work));
  json["currency"] = costs.currency;
  json["costs"] = Json::array();
  for (const CostLine& line : costs.lines) json["costs"].push_back(cost_json(line));
  json["other_spent_h"] = costs.other.spent_hours;
  json["other_spent_money"] = costs.other.spent_money;
  json["estimated_total"] = costs.total;
  json["actual_total"] = costs.actual_total;
  json["notes"] = work.notes;
  json["cost_notes"] = costs.notes;
  return json;
}

void print_steps(const WorkPlan& work, std::ostream& out) {
  const bool unplaced = work.unplaced > 0;
  out << fmt::format("{} {}: {:.0f} h of hands are left, from {}\n", unplaced ? "Not ready before" : "Ready on",
                     day_text(work.finish), work.hands_left_h, day_text(work.start));
  TextTable table({{"step"}, {"units left", true}, {"hands h", true}, {"machine h", true}, {"from"}, {"to"}});
  for (const StepPlan& step : work.steps) {
    const auto bar = std::ranges::find(work.bars, step.step, &WorkBar::step);
    const auto day = [&](double days) {
      return day_text(work.start + std::chrono::days(static_cast<int>(days)));
    };
    const bool left = bar != work.bars.end();
    const bool waits = unplaced && (step.step == WorkStep::cast || step.step == WorkStep::anneal);
    table.add({std::string(name_of(step.step)), fmt::format("{:g} of {:g}", step.units_left, step.units),
               fmt::format("{:.1f}", step.hands_left_h), fmt::format("{:.1f}", step.machine_left_h),
               left ? day(bar->from_day) : (waits ? "no vessel" : "done"), left ? day(bar->to_day) : ""});
  }
  table.print(out);
}

void print_costs(const Costs& costs, std::ostream& out) {
  out << fmt::format("\nMoney in {}: {:.0f} estimated for the whole lens, {:.0f} spent so far\n",
                     costs.currency, costs.total, costs.actual_total);
  TextTable lines({{"item"}, {"quantity", true}, {"unit"}, {"each", true}, {"cost", true}});
  for (const CostLine& line : costs.lines) {
    lines.add({line.item, fmt::format("{:.2f}", line.quantity), line.unit,
               fmt::format("{:.2f}", line.unit_cost), fmt::format("{:.2f}", line.cost)});
  }
  lines.print(out);
  TextTable steps({{"step"}, {"estimate", true}, {"spent", true}, {"hours", true}, {"hours spent", true}});
  const auto add = [&](const std::string& name, const StepCost& cost) {
    steps.add({name, fmt::format("{:.2f}", cost.money), fmt::format("{:.2f}", cost.actual_money),
               fmt::format("{:.1f}", cost.hours), fmt::format("{:.1f}", cost.spent_hours)});
  };
  for (const StepCost& cost : costs.steps) add(std::string(name_of(cost.step)), cost);
  if (costs.other.actual_money != 0) add("other", costs.other);
  out << '\n';
  steps.print(out);
}

class WorksPlan : public WorksAct {
 public:
  std::string_view name() const override { return "plan"; }
  std::string_view help() const override {
    return "what is left of every step, when the lens is ready, money estimated and spent";
  }
  void configure(CLI::App& command) override {
    add_answer_options(command, form_);
    add_moulds_option(command, moulds_);
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    const auto desk = works_to_read(path, voice);
    if (!desk) return refuse(desk.problem(), voice.err);
    auto moulds = moulds_of(*desk, moulds_, voice);
    if (!moulds) return refuse(moulds.problem(), voice.err);
    const WorksReckoning reckoning = reckon(*desk, frame_brass_kg(desk->plan), std::move(*moulds));
    const std::string table = work_plan_csv(reckoning.work) + "\n" + costs_csv(reckoning.costs);
    if (const Done kept = keep_csv(form_, table); !kept) return refuse(kept.problem(), voice.err);
    const ExitCode code = reckoning.work.unplaced > 0 ? ExitCode::not_well : ExitCode::done;
    if (form_.json) return print_json(plan_json(reckoning.work, reckoning.costs), code, voice.out, voice.err);
    print_steps(reckoning.work, voice.out);
    print_costs(reckoning.costs, voice.out);
    for (const std::string& note : reckoning.work.notes) voice.out << note << '\n';
    for (const std::string& note : reckoning.costs.notes) voice.out << note << '\n';
    return code;
  }

 private:
  AnswerForm form_;
  bool moulds_ = false;
};

}  // namespace

std::unique_ptr<WorksAct> works_plan() { return std::make_unique<WorksPlan>(); }

}  // namespace prismwright
