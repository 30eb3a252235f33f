#include <fmt/format.h>

#include "app/batch/text_table.h"
#include "app/batch/works_act.h"
#include "app/batch/works_loads_print.h"
#include "app/batch/works_reckoned.h"
#include "core/drawing/load_card.h"
#include "geometry/drawing_pdf.h"
#include "geometry/safe_file.h"

namespace prismwright {

namespace {

class WorksLoads : public WorksAct {
 public:
  std::string_view name() const override { return "loads"; }
  std::string_view help() const override {
    return "castings planned into fillings of the vessel, with masses, cure and annealing";
  }

  void configure(CLI::App& command) override {
    add_answer_options(command, form_);
    add_moulds_option(command, moulds_);
    command.add_flag("--steps", steps_, "the steps of cure and annealing of every load too");
    command.add_option("--card", card_, "a card to print and fill in for every load, as PDF");
    command.add_option("--load", only_, "the card of this load of the plan only")->check(CLI::Range(1, 100000));
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    const auto desk = works_to_read(path, voice);
    if (!desk) return refuse(desk.problem(), voice.err);
    auto moulds = moulds_of(*desk, moulds_, voice);
    if (!moulds) return refuse(moulds.problem(), voice.err);
    const WorksReckoning reckoning = reckon(*desk, 0, std::move(*moulds));
    if (!reckoning.loads) return refuse(request_problem("loads", "", reckoning.no_loads), voice.err);
    const LoadsAnswer answer{*reckoning.loads, reckoning.pieces, reckoning.cures, desk->plan.values.works};
    if (const Done kept = keep_csv(form_, loads_csv(answer)); !kept) return refuse(kept.problem(), voice.err);
    if (const Done kept = keep_cards(answer, desk->plan.values.brief.title); !kept)
      return refuse(kept.problem(), voice.err);
    const ExitCode code = answer.well() ? ExitCode::done : ExitCode::not_well;
    if (form_.json) return print_json(loads_json(answer), code, voice.out, voice.err);
    print_loads(answer, steps_, voice.out);
    return code;
  }

 private:
  [[nodiscard]] Done keep_cards(const LoadsAnswer& answer, const std::string& title) const {
    if (card_.empty()) return {};
    const std::size_t count = answer.plan.loads.size();
    if (count == 0)
      return request_problem(
          "no_load", "", "No load is planned, so there is no card to print: works make tells what is short.");
    if (only_ > static_cast<int>(count))
      return request_problem(
          "unknown_load", std::to_string(only_),
          fmt::format("There is no load {}: the plan has {}. Name one of those.", only_, count));
    Drawing cards;
    cards.title = title;
    cards.date = today_text();
    for (std::size_t i = 0; i < count; ++i) {
      if (only_ != 0 && i + 1 != static_cast<std::size_t>(only_)) continue;
      Drawing card = load_card(answer.plan, i, answer.pieces, answer.works, {title, cards.date, Paper::a4});
      for (Sheet& sheet : card.sheets) cards.sheets.push_back(std::move(sheet));
    }
    const auto bytes = pdf_bytes(cards);
    if (!bytes) return bytes.problem();
    return write_whole(card_, *bytes);
  }

  AnswerForm form_;
  bool moulds_ = false;
  bool steps_ = false;
  std::string card_;
  int only_ = 0;
};

}  // namespace

std::unique_ptr<WorksAct> works_loads() { return std::make_unique<WorksLoads>(); }

}  // namespace prismwright
