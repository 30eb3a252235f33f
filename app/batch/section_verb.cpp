#include "app/batch/books.h"
#include "app/batch/section_act.h"
#include "app/batch/verbs.h"

namespace prismwright {

namespace {

class SectionVerb : public Verb {
 public:
  std::string_view name() const override { return "section"; }
  std::string_view help() const override {
    return "zones of the section one by one, bands divided anew, variants kept and compared";
  }

  void configure(CLI::App& command) override {
    add_book_argument(command, path_);
    command.require_subcommand(1);
    for (const auto& act : acts_) {
      CLI::App* own = command.add_subcommand(std::string(act->name()), std::string(act->help()));
      act->configure(*own);
      own->final_callback([this, &act] { chosen_ = act.get(); });
    }
  }

  ExitCode run(Voice& voice) override { return chosen_->run(path_, voice); }

 private:
  std::string path_;
  std::vector<std::unique_ptr<SectionAct>> acts_ = all_section_acts();
  SectionAct* chosen_ = nullptr;
};

}  // namespace

std::vector<std::unique_ptr<SectionAct>> all_section_acts() {
  std::vector<std::unique_ptr<SectionAct>> acts;
  acts.push_back(section_list());
  acts.push_back(section_divide());
  acts.push_back(section_edit());
  acts.push_back(section_comparison());
  acts.push_back(section_keep());
  acts.push_back(section_take());
  acts.push_back(section_rename());
  acts.push_back(section_drop());
  acts.push_back(section_draw_act());
  return acts;
}

std::unique_ptr<Verb> section_verb() { return std::make_unique<SectionVerb>(); }

}  // namespace prismwright
