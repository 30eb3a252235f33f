#include <fmt/format.h>

#include "app/batch/text_table.h"
#include "app/batch/works_act.h"
#include "app/batch/works_decide.h"
#include "app/batch/works_inspected.h"
#include "core/lens/quantities.h"

namespace prismwright {

namespace {

class InspectList : public WorksAct {
 public:
  std::string_view name() const override { return "list"; }
  std::string_view help() const override { return "what to measure on a prism, and what was measured"; }
  void configure(CLI::App& command) override {
    command.add_option("MARK", word_, "of the prism, or the number of its casting")->required();
    command.add_flag("--how", how_, "in words, and how to measure each");
    add_answer_options(command, form_);
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    const auto desk = works_to_read(path, voice);
    if (!desk) return refuse(desk.problem(), voice.err);
    const auto mark = mark_named(*desk, word_);
    if (!mark) return refuse(mark.problem(), voice.err);
    const auto prism = inspected(*desk, *mark);
    if (!prism) return refuse(prism.problem(), voice.err);
    if (const Done kept = keep_csv(form_, inspection_csv({&*prism, 1})); !kept)
      return refuse(kept.problem(), voice.err);
    const ExitCode code = prism->unsettled > 0 ? ExitCode::not_well : ExitCode::done;
    if (form_.json) return print_json(inspected_json(*prism), code, voice.out, voice.err);
    print_features(*prism, how_, voice.out);
    return code;
  }

 private:
  std::string word_;
  bool how_ = false;
  AnswerForm form_;
};

class InspectRecord : public WorksAct {
 public:
  std::string_view name() const override { return "record"; }
  std::string_view help() const override { return "record what was measured on a prism"; }
  void configure(CLI::App& command) override {
    command.add_option("MARK", word_, "of the prism, or the number of its casting")->required();
    command
        .add_option("FEATURE=VALUE", values_, "\"width.A-B=31.42\": inspect list tells the features and units")
        ->required()
        ->expected(1, 1000);
    add_hand_options(command, by_, note_, "a remark");
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    auto desk = works_to_change(path, voice);
    if (!desk) return refuse(desk.problem(), voice.err);
    const auto mark = mark_named(*desk, word_);
    if (!mark) return refuse(mark.problem(), voice.err);
    const auto log = measurements(*desk, *mark);
    if (!log) return refuse(log.problem(), voice.err);
    if (const Done kept = desk->book.record({}, *log); !kept) return refuse(kept.problem(), voice.err);
    const auto prism = inspected(*desk, *mark);
    if (!prism) return refuse(prism.problem(), voice.err);
    bool well = true;
    for (const Measurement& entry : log->measurements) {
      const CheckedFeature* checked = prism->find(entry.feature);
      if (!checked) continue;
      well = well && checked->verdict == InspectionVerdict::within;
      voice.out << fmt::format("{} {}: {:+.3f} {} off, {}\n", *mark, entry.feature, checked->off,
                               checked->feature.unit, name_of(checked->verdict));
    }
    return well ? ExitCode::done : ExitCode::not_well;
  }

 private:
  [[nodiscard]] Outcome<WorksLog> measurements(const WorksDesk& desk, const std::string& mark) const {
    WorksLog log;
    for (const std::string& word : values_) {
      const std::size_t sign = word.find('=');
      const auto value = sign == std::string::npos ? std::nullopt : read_number(word.substr(sign + 1), "");
      if (!value) {
        return request_problem(
            "no_measurement", word,
            fmt::format("\"{}\" is no measurement: write FEATURE=VALUE, as width.A-B=31.42.", word));
      }
      Measurement entry;
      entry.mark = mark;
      entry.serial = standing_serial(desk, mark);
      entry.feature = word.substr(0, sign);
      entry.measured = *value;
      entry.by = by_;
      entry.note = note_;
      if (const Done fit = check_measurement(desk.plan, entry); !fit) return fit.problem();
      log.measurements.push_back(entry);
    }
    return log;
  }

  std::string word_;
  std::vector<std::string> values_;
  std::string by_;
  std::string note_;
};

Json verdicts_json(const std::vector<InspectedPrism>& prisms) {
  const InspectionSummary sum = summary_of(prisms);
  Json json;
  json["prisms"] = sum.prisms;
  json["fit"] = sum.fit;
  json["out"] = sum.out;
  json["measured"] = sum.measured;
  json["verdicts"] = Json::array();
  for (const InspectedPrism& prism : prisms) json["verdicts"].push_back(inspected_json(prism));
  return json;
}

class InspectVerdicts : public WorksAct {
 public:
  std::string_view name() const override { return "verdicts"; }
  std::string_view help() const override {
    return "every prism that was measured: fit, out of tolerance, or what is missing";
  }
  void configure(CLI::App& command) override {
    add_answer_options(command, form_);
    command.add_flag("--all", all_, "prisms that were not measured too");
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    const auto desk = works_to_read(path, voice);
    if (!desk) return refuse(desk.problem(), voice.err);
    const auto prisms = inspected(*desk);
    if (!prisms) return refuse(prisms.problem(), voice.err);
    if (const Done kept = keep_csv(form_, inspection_csv(*prisms)); !kept)
      return refuse(kept.problem(), voice.err);
    const InspectionSummary sum = summary_of(*prisms);
    const ExitCode code = sum.out > 0 ? ExitCode::not_well : ExitCode::done;
    if (form_.json) return print_json(verdicts_json(*prisms), code, voice.out, voice.err);
    voice.out << fmt::format("{} of {} measured, {} fit, {} out of tolerance\n", sum.measured, sum.prisms,
                             sum.fit, sum.out);
    TextTable table(
        {{"prism"}, {"casting", true}, {"within", true}, {"out", true}, {"missing", true}, {"verdict"}});
    for (const InspectedPrism& prism : *prisms) {
      if (!all_ && prism.within + prism.out == 0) continue;
      table.add({prism.mark, prism.serial == 0 ? "" : std::to_string(prism.serial),
                 std::to_string(prism.within), std::to_string(prism.out), std::to_string(prism.missing),
                 prism.words});
    }
    if (!table.empty()) table.print(voice.out);
    return code;
  }

 private:
  AnswerForm form_;
  bool all_ = false;
};

}  // namespace

std::unique_ptr<WorksAct> works_inspect() {
  std::vector<std::unique_ptr<WorksAct>> acts;
  acts.push_back(std::make_unique<InspectList>());
  acts.push_back(std::make_unique<InspectRecord>());
  acts.push_back(inspect_decide());
  acts.push_back(std::make_unique<InspectVerdicts>());
  return std::make_unique<WorksGroup>("inspect", "measurements against the drawing, verdicts and decisions",
                                      std::move(acts));
}

}  // namespace prismwright
