#include "app/batch/works_steps.h"

#include <fmt/format.h>

namespace prismwright {

namespace {

std::string stage_list() {
  std::string list;
  for (const Stage stage : kStages) list += (list.empty() ? "" : ", ") + std::string(name_of(stage));
  return list;
}

/// "no. 12", "nos. 12 to 14": the numbers that the book gave to new castings. They follow each other.
std::string casting_words(const std::vector<LedgerEntry>& ledger, std::size_t before) {
  long long first = 0;
  long long last = 0;
  for (std::size_t i = before; i < ledger.size(); ++i) {
    if (ledger[i].to != Stage::cast || ledger[i].serial == 0) continue;
    if (first == 0) first = ledger[i].serial;
    last = ledger[i].serial;
  }
  if (first == 0) return "";
  return first == last ? fmt::format(", casting no. {}", first)
                       : fmt::format(", castings nos. {} to {}", first, last);
}

}  // namespace

Outcome<Stage> read_stage(const std::string& text) {
  if (const auto stage = find_stage(text)) return *stage;
  return request_problem("unknown_stage", text,
                         fmt::format("\"{}\" is no stage of the work: use one of {}.", text, stage_list()));
}

ExitCode write_steps(WorksDesk& desk, const StepRequest& request, const std::optional<VesselLoad>& new_load,
                     Voice& voice) {
  const auto entries = plan_steps(request, stages_from(desk.book.ledger()), desk.marks(request.marks));
  if (!entries) return refuse(entries.problem(), voice.err);
  WorksLog more;
  if (new_load) more.loads.push_back(*new_load);
  const std::size_t before = desk.book.ledger().size();
  if (const Done written = desk.book.record(*entries, more); !written)
    return refuse(written.problem(), voice.err);
  voice.out << fmt::format("{} recorded as {}{}", counted(request.marks.size(), "prism", "prisms"),
                           name_of(request.to), casting_words(desk.book.ledger(), before));
  if (new_load) voice.out << fmt::format(", load {}", desk.book.works_log().loads.back().number);
  voice.out << ".\n";
  return ExitCode::done;
}

}  // namespace prismwright
