#include "ui/models/plan_table.h"

#include <QCoreApplication>
#include <QDate>
#include <QLocale>
#include <algorithm>

#include "ui/models/shown_numbers.h"

namespace prismwright {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("PlanTable", text); }
QString qt(const std::string& text) { return QString::fromStdString(text); }

Cell hours_cell(double hours) { return number_cell(QString::number(hours, 'f', 1), hours); }
Cell money_cell(double money) { return number_cell(QLocale::c().toString(money, 'f', 0), money); }

const WorkBar* bar_of(const WorkPlan& plan, WorkStep step) {
  const auto found =
      std::find_if(plan.bars.begin(), plan.bars.end(), [step](const WorkBar& bar) { return bar.step == step; });
  return found == plan.bars.end() ? nullptr : &*found;
}

std::chrono::sys_days day_after(const WorkPlan& plan, double days) {
  return plan.start + std::chrono::days(static_cast<int>(days));
}

Cell day_cell(const WorkPlan& plan, std::optional<double> days) {
  if (!days) return blank_cell();
  const auto day = day_after(plan, *days);
  return {day_words(day), *days, qt(day_text(day))};
}

CellRow step_row(const WorksReckoning& works, WorkStep step) {
  const StepPlan& planned = works.work.of(step);
  const StepCost& cost = works.costs.steps[static_cast<std::size_t>(step)];
  const WorkBar* bar = bar_of(works.work, step);
  CellRow row;
  row.cells = {word_cell(step_words(step)),
               number_cell(QString::number(planned.units_left, 'g', 6), planned.units_left),
               hours_cell(planned.hands_left_h),
               hours_cell(planned.machine_left_h),
               day_cell(works.work, bar ? std::optional(bar->from_day) : std::nullopt),
               day_cell(works.work, bar ? std::optional(bar->to_day) : std::nullopt),
               hours_cell(cost.hours),
               hours_cell(cost.spent_hours),
               money_cell(cost.money),
               money_cell(cost.actual_money)};
  return row;
}

CellRow total_row(const WorksReckoning& works) {
  double hours = 0;
  double spent = works.costs.other.spent_hours;
  for (const StepCost& cost : works.costs.steps) {
    hours += cost.hours;
    spent += cost.spent_hours;
  }
  CellRow row;
  row.cells = {word_cell(tr("whole lens")),
               blank_cell(),
               hours_cell(works.work.hands_left_h),
               blank_cell(),
               day_cell(works.work, 0.0),
               day_cell(works.work, works.work.unplaced > 0 ? std::nullopt : std::optional(works.work.days)),
               hours_cell(hours),
               hours_cell(spent),
               money_cell(works.costs.total),
               money_cell(works.costs.actual_total)};
  return row;
}

QString finish_words(const WorkPlan& plan) {
  if (plan.bars.empty())
    return plan.unplaced > 0 ? tr("Not ready before a vessel takes the castings that are left.")
                             : tr("Nothing is left to do.");
  const QString words = plan.unplaced > 0
                            ? tr("Not ready before %1 when work starts on %2; %3 hours of hands left.")
                            : tr("Finished on %1 when work starts on %2; %3 hours of hands left.");
  return words.arg(day_words(plan.finish), day_words(plan.start)).arg(plan.hands_left_h, 0, 'f', 0);
}

}  // namespace

QString step_words(WorkStep step) {
  switch (step) {
    case WorkStep::master:
      return tr("masters");
    case WorkStep::mould:
      return tr("moulds");
    case WorkStep::cast:
      return tr("casting");
    case WorkStep::anneal:
      return tr("annealing");
    case WorkStep::polish:
      return tr("polishing");
    case WorkStep::prove:
      return tr("proving");
    case WorkStep::glaze:
      return tr("glazing");
    case WorkStep::frame:
      return tr("frame");
  }
  return {};
}

QString day_words(std::chrono::sys_days day) {
  const std::chrono::year_month_day date(day);
  const QDate shown(static_cast<int>(date.year()), static_cast<int>(static_cast<unsigned>(date.month())),
                    static_cast<int>(static_cast<unsigned>(date.day())));
  return QLocale().toString(shown, QStringLiteral("d MMM yyyy"));
}

CellSheet steps_sheet(const WorksReckoning& works) {
  const QString money = qt(works.costs.currency);
  CellSheet sheet;
  sheet.heads = {{tr("Step"), "step", {}, false},
                 {tr("Left"), "units_left", tr("Masters, moulds, loads or prisms still to do"), true},
                 {tr("Hands\nh left"), "hands_left_h", {}, true},
                 {tr("Machine\nh left"), "machine_left_h", tr("Printer, vessel or oven, day and night"), true},
                 {tr("From"), "from", {}, false},
                 {tr("To"), "to", {}, false},
                 {tr("Hours\nestimate"), "hours_estimate", tr("For the whole lens, loss counted in"), true},
                 {tr("Hours\nspent"), "hours_spent", {}, true},
                 {tr("Estimate\n%1").arg(money), "money_estimate", tr("Hours and material"), true},
                 {tr("Spent\n%1").arg(money), "money_spent", tr("Hours and money entered"), true}};
  for (const WorkStep step : kWorkSteps) sheet.rows.push_back(step_row(works, step));
  sheet.rows.push_back(total_row(works));
  return sheet;
}

CellSheet costs_sheet(const Costs& costs) {
  CellSheet sheet;
  sheet.heads = {{tr("Item"), "item", {}, false},
                 {tr("Quantity"), "quantity", {}, true},
                 {tr("Unit"), "unit", {}, false},
                 {tr("Each\n%1").arg(qt(costs.currency)), "unit_cost", {}, true},
                 {tr("Cost\n%1").arg(qt(costs.currency)), "cost", {}, true}};
  for (const CostLine& line : costs.lines) {
    CellRow row;
    row.cells = {word_cell(qt(line.item)), number_cell(QString::number(line.quantity, 'f', 1), line.quantity),
                 word_cell(qt(line.unit)), number_cell(QString::number(line.unit_cost, 'f', 2), line.unit_cost),
                 money_cell(line.cost)};
    sheet.rows.push_back(std::move(row));
  }
  return sheet;
}

QString plan_words(const WorksReckoning& works) {
  const WorkPlan& plan = works.work;
  QStringList words = {finish_words(plan)};
  for (const auto* notes : {&plan.notes, &works.costs.notes})
    for (const std::string& note : *notes) words << sentence_of(request_problem({}, {}, note));
  return words.join(' ');
}

}  // namespace prismwright
