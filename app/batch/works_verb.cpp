#include <fmt/format.h>

#include "app/batch/books.h"
#include "app/batch/mark_patterns.h"
#include "app/batch/text_table.h"
#include "app/batch/verbs.h"
#include "app/batch/works_json.h"
#include "core/lens/plan.h"

namespace prismwright {

namespace {

std::string stage_list() {
  std::string list;
  for (const Stage stage : kStages) list += (list.empty() ? "" : ", ") + std::string(name_of(stage));
  return list;
}

Outcome<Stage> read_stage(const std::string& text) {
  if (const auto stage = find_stage(text)) return *stage;
  return request_problem("unknown_stage", text,
                         fmt::format("\"{}\" is no stage of the work: use one of {}.", text, stage_list()));
}

/// Counts that are nought are left empty, so that the eye finds the others.
std::vector<std::string> count_row(const std::string& head, const StageTally& counts) {
  std::vector<std::string> row = {head};
  for (const int count : counts) row.push_back(count == 0 ? "" : std::to_string(count));
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

void print_ledger(std::span<const LedgerEntry> ledger, std::ostream& out) {
  TextTable table({{"no.", true}, {"when"}, {"prism"}, {"from"}, {"to"}, {"by"}, {"note"}});
  for (const LedgerEntry& entry : ledger) {
    table.add({std::to_string(entry.number), entry.when_utc, entry.mark, std::string(name_of(entry.from)),
               std::string(name_of(entry.to)), entry.by, entry.note});
  }
  table.print(out);
}

class WorksVerb : public Verb {
 public:
  std::string_view name() const override { return "works"; }
  std::string_view help() const override { return "which prisms are made: list, or record a step"; }

  void configure(CLI::App& command) override {
    add_book_argument(command, path_);
    command.require_subcommand(1);
    configure_list(*command.add_subcommand("list", "counts by stage and zone"));
    configure_record(*command.add_subcommand("record", "record a step for one prism or many, all or none"));
  }

  ExitCode run(Voice& voice) override { return recording_->parsed() ? record(voice) : list(voice); }

 private:
  void configure_list(CLI::App& command) {
    command.add_flag("--json", json_, "answer in JSON");
    command.add_flag("--ledger", ledger_, "every line of the ledger too");
  }

  void configure_record(CLI::App& command) {
    recording_ = &command;
    command
        .add_option("MARK...", words_,
                    "marks, then the stage reached; * stands for any run of letters: \"P01-*\"")
        ->required()
        ->expected(2, 100000);
    command.add_option("--by", request_.by, "who did it");
    command.add_option("--note", request_.note, "needed where a step is skipped or gone back, and for scrap");
    command.add_option("--back-to", back_to_, "scrapped: the stage to start again from (moulded unless said)");
  }

  ExitCode list(Voice& voice) {
    const auto book = open_to_read(path_, voice);
    if (!book) return refuse(book.problem(), voice.err);
    const auto plan = plan_lens(book->values());
    if (!plan) return refuse(plan.problem(), voice.err);
    if (json_) return print_json(works_json(book->ledger(), *plan), ExitCode::done, voice.out, voice.err);
    const StageCounts counts = count_stages(stages_from(book->ledger()), marks_of(*plan));
    voice.out << fmt::format("{} of {} glazed\n", counts.all[static_cast<std::size_t>(Stage::glazed)],
                             counts.total);
    print_counts(counts, plan->section, voice.out);
    if (ledger_) print_ledger(book->ledger(), voice.out);
    return ExitCode::done;
  }

  ExitCode record(Voice& voice) {
    const auto stage = read_stage(words_.back());
    if (!stage) return refuse(stage.problem(), voice.err);
    request_.to = *stage;
    if (!back_to_.empty()) {
      const auto back = read_stage(back_to_);
      if (!back) return refuse(back.problem(), voice.err);
      request_.back_to = *back;
    }
    auto book = open_to_change(path_, voice);
    if (!book) return refuse(book.problem(), voice.err);
    return write(*book, voice);
  }

  ExitCode write(Lensbook& book, Voice& voice) {
    const auto plan = plan_lens(book.values());
    if (!plan) return refuse(plan.problem(), voice.err);
    const std::vector<std::string> known = marks_of(*plan);
    const std::span<const std::string> patterns(words_.data(), words_.size() - 1);
    auto marks = named_marks(patterns, known);
    if (!marks) return refuse(marks.problem(), voice.err);
    request_.marks = std::move(marks).value();
    const auto entries = plan_steps(request_, stages_from(book.ledger()), known);
    if (!entries) return refuse(entries.problem(), voice.err);
    const Done written = book.record(*entries);
    if (!written) return refuse(written.problem(), voice.err);
    voice.out << fmt::format("{} {} recorded as {}.\n", request_.marks.size(),
                             request_.marks.size() == 1 ? "prism" : "prisms", name_of(request_.to));
    return ExitCode::done;
  }

  std::string path_;
  std::vector<std::string> words_;
  std::string back_to_;
  StepRequest request_;
  CLI::App* recording_ = nullptr;
  bool json_ = false;
  bool ledger_ = false;
};

}  // namespace

std::unique_ptr<Verb> works_verb() { return std::make_unique<WorksVerb>(); }

}  // namespace prismwright
