#include <fmt/format.h>

#include "app/batch/json_print.h"
#include "app/batch/text_table.h"
#include "app/batch/works_act.h"
#include "app/batch/works_desk.h"
#include "core/works/prism_life.h"

namespace prismwright {

namespace {

Json life_json(const std::vector<LifeEvent>& life) {
  Json json = Json::array();
  for (const LifeEvent& event : life) {
    Json one;
    one["when_utc"] = event.when_utc;
    one["kind"] = name_of(event.kind);
    one["what"] = event.what;
    one["by"] = event.by;
    one["note"] = event.note;
    json.push_back(one);
  }
  return json;
}

class WorksLife : public WorksAct {
 public:
  std::string_view name() const override { return "life"; }
  std::string_view help() const override {
    return "the whole life of a prism, or of one casting by its number";
  }
  void configure(CLI::App& command) override {
    command.add_option("MARK", word_, "of the prism or spare, the number of a casting, or a scanned code")
        ->required();
    add_answer_options(command, form_);
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    const auto desk = works_to_read(path, voice);
    if (!desk) return refuse(desk.problem(), voice.err);
    const auto life = life_of(*desk);
    if (!life) return refuse(life.problem(), voice.err);
    if (const Done kept = keep_csv(form_, life_csv(*life)); !kept) return refuse(kept.problem(), voice.err);
    if (form_.json) return print_json(life_json(*life), ExitCode::done, voice.out, voice.err);
    TextTable table({{"when"}, {"what"}, {"by"}, {"note"}});
    for (const LifeEvent& event : *life) table.add({event.when_utc, event.what, event.by, event.note});
    if (table.empty())
      voice.out << "Nothing is recorded yet.\n";
    else
      table.print(voice.out);
    return ExitCode::done;
  }

 private:
  [[nodiscard]] Outcome<std::vector<LifeEvent>> life_of(const WorksDesk& desk) const {
    const WorksRecord record{desk.book.ledger(), desk.book.works_log(), desk.book.readings()};
    // A casting that was scrapped stands for no mark any more, yet has its life.
    if (const long long serial = casting_in(word_); serial != 0) return life_of_casting(record, serial);
    const auto mark = mark_named(desk, word_);
    if (!mark) return mark.problem();
    return life_of_mark(record, *mark);
  }

  std::string word_;
  AnswerForm form_;
};

}  // namespace

std::unique_ptr<WorksAct> works_life() { return std::make_unique<WorksLife>(); }

}  // namespace prismwright
