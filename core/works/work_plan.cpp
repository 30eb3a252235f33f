#include "core/works/work_plan.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/works/work_bars.h"
#include "core/works/work_hours.h"
#include "core/works/works_checks.h"

namespace prismwright {
namespace {

using std::chrono::sys_days;

/// Beyond this a date is no promise, and its year has more than four digits.
constexpr sys_days kLastDay = sys_days(std::chrono::year(9999) / 12 / 31);

sys_days day_after(sys_days start, double days) {
  const double left = static_cast<double>((kLastDay - start).count());
  // Work that ends at the stroke of midnight ends on the day before.
  const double whole = std::max(0.0, std::ceil(days - 1e-9) - 1);
  return start + std::chrono::days(static_cast<long>(std::min(left, whole)));
}

int unplaced_castings(const MakeList& list, const WorkInputs& inputs) {
  const int wanted = list.totals.short_of;
  return inputs.loads ? std::max(0, wanted - inputs.loads->castings.value_or(wanted)) : 0;
}

std::vector<std::string> notes_of(const WorkPlan& work, const MakeList& list, const WorkInputs& inputs) {
  std::vector<std::string> notes;
  if (!inputs.loads && list.totals.short_of > 0)
    notes.push_back(
        "No loads were planned; they are guessed as if the vessel had room for all moulds of like "
        "thickness");
  if (work.unplaced > 0)
    notes.push_back(
        fmt::format("{} of {} castings fit no load of the vessel. The plan takes no time for filling "
                    "and annealing them: enter the vessel that will take them",
                    work.unplaced, list.totals.short_of));
  if (work.start < inputs.today && work.hands_left_h > 0)
    notes.push_back(
        fmt::format("Work is reckoned from {}, which is past. Leave works.start_date blank to "
                    "reckon from the day",
                    day_text(work.start)));
  if (work.finish == kLastDay) notes.push_back("The end lies beyond the year 9999. Raise works.hours_a_week");
  return notes;
}

}  // namespace

std::string_view name_of(WorkStep step) {
  switch (step) {
    case WorkStep::master:
      return "master";
    case WorkStep::mould:
      return "mould";
    case WorkStep::cast:
      return "cast";
    case WorkStep::anneal:
      return "anneal";
    case WorkStep::polish:
      return "polish";
    case WorkStep::prove:
      return "prove";
    case WorkStep::glaze:
      return "glaze";
    case WorkStep::frame:
      return "frame";
  }
  return "master";
}

std::optional<WorkStep> find_work_step(std::string_view name) {
  for (const WorkStep step : kWorkSteps) {
    if (name_of(step) == name) return step;
  }
  return std::nullopt;
}

WorkPlan work_plan(const LensPlan& plan, const MakeList& list, const WorkInputs& inputs) {
  const WorksSettings& works = plan.values.works;
  const LoadCounts loads = inputs.loads ? *inputs.loads : guess_loads(plan, list);
  const auto steps = step_hours(plan, list, loads, inputs);
  WorkPlan work;
  const auto start = read_day(works.start_date);
  work.start = start ? sys_days(*start) : inputs.today;
  for (const StepHours& step : steps) {
    work.steps.push_back(step.plan);
    work.hands_left_h += step.plan.hands_left_h;
  }
  work.bars = work_bars(steps, works.hours_a_week);
  for (const WorkBar& bar : work.bars) work.days = std::max(work.days, bar.to_day);
  work.finish = day_after(work.start, work.days);
  work.unplaced = unplaced_castings(list, inputs);
  work.notes = notes_of(work, list, inputs);
  return work;
}

std::string day_text(sys_days day) {
  const std::chrono::year_month_day date(day);
  return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(date.year()), static_cast<unsigned>(date.month()),
                     static_cast<unsigned>(date.day()));
}

std::string work_plan_csv(const WorkPlan& plan) {
  std::string text = "step,units,units_left,hands_h,hands_left_h,machine_left_h,from_day,to_day,from,to\n";
  for (const StepPlan& step : plan.steps) {
    text += fmt::format("{},{:g},{:.3g},{:.2f},{:.2f},{:.2f}", name_of(step.step), step.units, step.units_left,
                        step.hands_h, step.hands_left_h, step.machine_left_h);
    const auto bar =
        std::find_if(plan.bars.begin(), plan.bars.end(), [&](const WorkBar& b) { return b.step == step.step; });
    if (bar == plan.bars.end()) {
      text += ",,,,\n";
      continue;
    }
    text += fmt::format(",{:.2f},{:.2f},{},{}\n", bar->from_day, bar->to_day,
                        day_text(day_after(plan.start, std::floor(bar->from_day) + 1)),
                        day_text(day_after(plan.start, bar->to_day)));
  }
  return text;
}

}  // namespace prismwright
