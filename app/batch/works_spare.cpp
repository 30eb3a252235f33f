#include <fmt/format.h>

#include <algorithm>

#include "app/batch/json_print.h"
#include "app/batch/text_table.h"
#include "app/batch/works_act.h"
#include "app/batch/works_desk.h"
#include "core/works/spares.h"

namespace prismwright {

namespace {

std::string spares_csv(const std::vector<std::string>& spares, const StageByMark& now) {
  std::string csv = "mark,stage,serial\n";
  for (const std::string& spare : spares) {
    const auto serial = now.serial.find(spare);
    csv += fmt::format("{},{},{}\n", spare, name_of(now.stage_of(spare)),
                       serial == now.serial.end() ? "" : std::to_string(serial->second));
  }
  return csv;
}

class SpareList : public WorksAct {
 public:
  std::string_view name() const override { return "list"; }
  std::string_view help() const override {
    return "spare castings, their stages, and the next spare's mark of each master";
  }
  void configure(CLI::App& command) override { add_answer_options(command, form_); }

  ExitCode run(const std::string& path, Voice& voice) override {
    const auto desk = works_to_read(path, voice);
    if (!desk) return refuse(desk.problem(), voice.err);
    const std::vector<LedgerEntry>& ledger = desk->book.ledger();
    const StageByMark now = stages_from(ledger);
    const std::vector<std::string> spares = spare_marks(ledger);
    if (const Done kept = keep_csv(form_, spares_csv(spares, now)); !kept)
      return refuse(kept.problem(), voice.err);
    if (form_.json) return print_json(spares_json(*desk, spares, now), ExitCode::done, voice.out, voice.err);
    if (spares.empty()) {
      const std::string next = next_spare_mark(masters_of(desk->plan).front().name, ledger);
      voice.out << "No spares are recorded. A spare has a mark of its own in works record, as " << next
                << ".\n";
      return ExitCode::done;
    }
    TextTable table({{"spare"}, {"stage"}, {"casting", true}});
    for (const std::string& spare : spares) {
      const long long serial = standing_serial(*desk, spare);
      table.add({spare, std::string(name_of(now.stage_of(spare))), serial == 0 ? "" : std::to_string(serial)});
    }
    table.print(voice.out);
    return ExitCode::done;
  }

 private:
  static Json spares_json(const WorksDesk& desk, const std::vector<std::string>& spares,
                          const StageByMark& now) {
    Json json;
    json["spares"] = Json::array();
    for (const std::string& spare : spares) {
      Json one;
      one["mark"] = spare;
      one["stage"] = name_of(now.stage_of(spare));
      const auto serial = now.serial.find(spare);
      one["serial"] = serial == now.serial.end() ? Json() : Json(serial->second);
      json["spares"].push_back(one);
    }
    json["next_marks"] = Json::object();
    for (const Master& master : masters_of(desk.plan))
      json["next_marks"][master.name] = next_spare_mark(master.name, desk.book.ledger());
    return json;
  }

  AnswerForm form_;
};

class SpareGive : public WorksAct {
 public:
  std::string_view name() const override { return "give"; }
  std::string_view help() const override { return "give a spare casting to a prism that has none"; }
  void configure(CLI::App& command) override {
    command.add_option("SPARE", spare_, "mark of the spare, or the number of its casting")->required();
    command.add_option("MARK", mark_, "of the prism")->required();
    add_hand_options(command, by_, note_, "a remark");
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    auto desk = works_to_change(path, voice);
    if (!desk) return refuse(desk.problem(), voice.err);
    const auto spare = mark_named(*desk, spare_);
    if (!spare) return refuse(spare.problem(), voice.err);
    const auto mark = mark_named(*desk, mark_);
    if (!mark) return refuse(mark.problem(), voice.err);
    const auto lines =
        give_spare(*mark, *spare, by_, note_, stages_from(desk->book.ledger()), masters_of(desk->plan));
    if (!lines) return refuse(lines.problem(), voice.err);
    if (const Done kept = desk->book.record(*lines); !kept) return refuse(kept.problem(), voice.err);
    voice.out << fmt::format("{} is casting no. {} now, that was {}.\n", *mark, standing_serial(*desk, *mark),
                             *spare);
    return ExitCode::done;
  }

 private:
  std::string spare_;
  std::string mark_;
  std::string by_;
  std::string note_;
};

}  // namespace

std::unique_ptr<WorksAct> works_spare() {
  std::vector<std::unique_ptr<WorksAct>> acts;
  acts.push_back(std::make_unique<SpareList>());
  acts.push_back(std::make_unique<SpareGive>());
  return std::make_unique<WorksGroup>("spare", "spare castings: list them, give one to a prism",
                                      std::move(acts));
}

}  // namespace prismwright
