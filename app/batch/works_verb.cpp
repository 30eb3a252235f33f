#include "app/batch/books.h"
#include "app/batch/verbs.h"
#include "app/batch/works_act.h"

namespace prismwright {

WorksGroup::WorksGroup(std::string name, std::string help, std::vector<std::unique_ptr<WorksAct>> acts)
    : name_(std::move(name)), help_(std::move(help)), acts_(std::move(acts)) {}

void WorksGroup::configure(CLI::App& command) {
  command.require_subcommand(1);
  for (const auto& act : acts_) {
    CLI::App* own = command.add_subcommand(std::string(act->name()), std::string(act->help()));
    act->configure(*own);
    own->final_callback([this, &act] { chosen_ = act.get(); });
  }
}

ExitCode WorksGroup::run(const std::string& book_path, Voice& voice) { return chosen_->run(book_path, voice); }

namespace {

class WorksVerb : public Verb {
 public:
  std::string_view name() const override { return "works"; }
  std::string_view help() const override {
    return "masters, moulds, loads, inspection, time and money, and the record of every prism";
  }

  void configure(CLI::App& command) override {
    add_book_argument(command, path_);
    acts_.configure(command);
  }

  ExitCode run(Voice& voice) override { return acts_.run(path_, voice); }

 private:
  std::string path_;
  WorksGroup acts_{"works", "", all_works_acts()};
};

}  // namespace

std::vector<std::unique_ptr<WorksAct>> all_works_acts() {
  std::vector<std::unique_ptr<WorksAct>> acts;
  acts.push_back(works_list());
  acts.push_back(works_record());
  acts.push_back(works_correct());
  acts.push_back(works_life());
  acts.push_back(works_make());
  acts.push_back(works_masters());
  acts.push_back(works_moulds());
  acts.push_back(works_loads());
  acts.push_back(works_shrink());
  acts.push_back(works_inspect());
  acts.push_back(works_photo());
  acts.push_back(works_spare());
  acts.push_back(works_spend());
  acts.push_back(works_plan());
  acts.push_back(works_labels());
  acts.push_back(works_travellers());
  return acts;
}

std::unique_ptr<Verb> works_verb() { return std::make_unique<WorksVerb>(); }

}  // namespace prismwright
