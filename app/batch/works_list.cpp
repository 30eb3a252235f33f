#include <fmt/format.h>

#include "app/batch/mark_patterns.h"
#include "app/batch/text_table.h"
#include "app/batch/works_act.h"
#include "app/batch/works_desk.h"
#include "app/batch/works_json.h"
#include "core/works/works_csv.h"

namespace prismwright {

namespace {

std::string number_text(long long number) { return number == 0 ? "" : std::to_string(number); }

/// Counts that are nought are left empty, so that the eye finds the others.
std::vector<std::string> count_row(const std::string& head, const StageTally& counts) {
  std::vector<std::string> row = {head};
  for (const int count : counts) row.push_back(number_text(count));
  return row;
}

void print_counts(const StageCounts& counts, const Section& section, std::ostream& out) {
  std::vector<TextTable::Column> columns = {{"zone"}};
  for (const Stage stage : kStages) columns.push_back({std::string(name_of(stage)), true});
  TextTable table(columns);
  for (const auto& [zone, by_stage] : zones_in_order(counts, section)) table.add(count_row(zone, by_stage));
  table.add(count_row("all", counts.all));
  table.print(out);
}

void print_prisms(const WorksDesk& desk, std::ostream& out) {
  const StageByMark now = stages_from(desk.book.ledger());
  TextTable table({{"prism"}, {"stage"}, {"casting", true}});
  for (const std::string& mark : desk.marks()) {
    const auto serial = now.serial.find(mark);
    table.add({mark, std::string(name_of(now.stage_of(mark))),
               serial == now.serial.end() ? "" : std::to_string(serial->second)});
  }
  out << '\n';
  table.print(out);
}

void print_ledger(std::span<const LedgerEntry> ledger, std::ostream& out) {
  TextTable table({{"no.", true},
                   {"when"},
                   {"prism"},
                   {"from"},
                   {"to"},
                   {"casting", true},
                   {"load", true},
                   {"by"},
                   {"note"}});
  for (const LedgerEntry& entry : ledger) {
    table.add({std::to_string(entry.number), entry.when_utc, entry.mark, std::string(name_of(entry.from)),
               std::string(name_of(entry.to)), number_text(entry.serial), number_text(entry.load), entry.by,
               entry.note});
  }
  out << '\n';
  table.print(out);
}

class WorksList : public WorksAct {
 public:
  std::string_view name() const override { return "list"; }
  std::string_view help() const override { return "counts by stage and zone; each prism; the ledger"; }

  void configure(CLI::App& command) override {
    add_answer_options(command, form_);
    command.add_flag("--prisms", prisms_, "every prism with its stage and casting too");
    command.add_flag("--ledger", ledger_, "every line of the ledger too");
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    const auto desk = works_to_read(path, voice);
    if (!desk) return refuse(desk.problem(), voice.err);
    const auto& ledger = desk->book.ledger();
    if (const Done kept = keep_csv(form_, ledger_csv(ledger)); !kept) return refuse(kept.problem(), voice.err);
    if (form_.json)
      return print_json(works_json(ledger, desk->plan, desk->marks()), ExitCode::done, voice.out, voice.err);
    const StageCounts counts = count_stages(stages_from(ledger), marks_of(desk->plan));
    voice.out << fmt::format("{} of {} glazed\n", counts.all[static_cast<std::size_t>(Stage::glazed)],
                             counts.total);
    print_counts(counts, desk->plan.section, voice.out);
    if (prisms_) print_prisms(*desk, voice.out);
    if (ledger_) print_ledger(ledger, voice.out);
    return ExitCode::done;
  }

 private:
  AnswerForm form_;
  bool prisms_ = false;
  bool ledger_ = false;
};

}  // namespace

std::unique_ptr<WorksAct> works_list() { return std::make_unique<WorksList>(); }

}  // namespace prismwright
