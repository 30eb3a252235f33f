#include <fmt/format.h>

#include <cmath>

#include "app/batch/works_act.h"
#include "app/batch/works_desk.h"
#include "core/works/work_plan.h"

namespace prismwright {

namespace {

std::string step_list() {
  std::string list;
  for (const WorkStep step : kWorkSteps) list += (list.empty() ? "" : ", ") + std::string(name_of(step));
  return list;
}

class WorksSpend : public WorksAct {
 public:
  std::string_view name() const override { return "spend"; }
  std::string_view help() const override { return "record hours worked and money spent on a step of the plan"; }

  void configure(CLI::App& command) override {
    command.add_option("STEP", spending_.step, step_list())->required();
    command.add_option("--hours", spending_.hours, "hours worked");
    command.add_option("--money", spending_.money, "money spent, beside the hours; in works.currency");
    add_hand_options(command, spending_.by, spending_.note,
                     "on what; needed to take an earlier entry back (below 0)");
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    if (!find_work_step(spending_.step)) {
      return refuse(request_problem("unknown_step", spending_.step,
                                    fmt::format("\"{}\" is no step of the plan: use one of {}.", spending_.step,
                                                step_list())),
                    voice.err);
    }
    auto desk = works_to_change(path, voice);
    if (!desk) return refuse(desk.problem(), voice.err);
    WorksLog log;
    log.spendings.push_back(spending_);
    if (const Done written = desk->book.record({}, log); !written) return refuse(written.problem(), voice.err);
    voice.out << fmt::format("{:g} h and {:.2f} {} recorded for {}.\n", spending_.hours, spending_.money,
                             desk->plan.values.works.currency, spending_.step);
    return ExitCode::done;
  }

 private:
  Spending spending_;
};

}  // namespace

std::unique_ptr<WorksAct> works_spend() { return std::make_unique<WorksSpend>(); }

}  // namespace prismwright
