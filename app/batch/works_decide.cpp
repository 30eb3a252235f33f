#include "app/batch/works_decide.h"

#include <fmt/format.h>

#include "app/batch/works_desk.h"
#include "core/works/inspection.h"

namespace prismwright {

namespace {

std::optional<DecisionKind> find_decision(const std::string& word) {
  if (word == "accept") return DecisionKind::accept;
  if (word == "shim") return DecisionKind::shim;
  if (word == "scrap") return DecisionKind::scrap;
  return std::nullopt;
}

class InspectDecide : public WorksAct {
 public:
  std::string_view name() const override { return "decide"; }
  std::string_view help() const override { return "accept, shim or scrap a prism, with the reason"; }
  void configure(CLI::App& command) override {
    command.add_option("MARK", word_, "of the prism, or the number of its casting")->required();
    command.add_option("DECISION", decision_word_, "accept, shim or scrap (which scraps it in the ledger too)")
        ->required();
    add_hand_options(command, decision_.by, decision_.note, "the reason; always needed");
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    const auto kind = find_decision(decision_word_);
    if (!kind) {
      return refuse(
          request_problem("unknown_decision", decision_word_,
                          fmt::format("\"{}\" is no decision: use accept, shim or scrap.", decision_word_)),
          voice.err);
    }
    auto desk = works_to_change(path, voice);
    if (!desk) return refuse(desk.problem(), voice.err);
    const auto mark = mark_named(*desk, word_);
    if (!mark) return refuse(mark.problem(), voice.err);
    decision_.kind = *kind;
    decision_.mark = *mark;
    decision_.serial = standing_serial(*desk, *mark);
    if (const Done fit = check_decision(desk->plan, decision_); !fit) return refuse(fit.problem(), voice.err);
    return keep(*desk, voice);
  }

 private:
  ExitCode keep(WorksDesk& desk, Voice& voice) {
    std::vector<LedgerEntry> lines;
    if (decision_.kind == DecisionKind::scrap) {
      StepRequest request;
      request.marks = {decision_.mark};
      request.to = Stage::scrapped;
      request.by = decision_.by;
      request.note = decision_.note;
      auto planned = plan_steps(request, stages_from(desk.book.ledger()), desk.marks());
      if (!planned) return refuse(planned.problem(), voice.err);
      lines = std::move(planned).value();
    }
    WorksLog log;
    log.decisions.push_back(decision_);
    if (const Done kept = desk.book.record(lines, log); !kept) return refuse(kept.problem(), voice.err);
    voice.out << fmt::format("{}: {} recorded.\n", decision_.mark, decision_word_);
    return ExitCode::done;
  }

  std::string word_;
  std::string decision_word_;
  Decision decision_;
};

}  // namespace

std::unique_ptr<WorksAct> inspect_decide() { return std::make_unique<InspectDecide>(); }

}  // namespace prismwright
