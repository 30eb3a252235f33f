#include <fmt/format.h>

#include "app/batch/works_act.h"
#include "app/batch/works_desk.h"
#include "app/batch/works_papers.h"
#include "core/works/traveller_facts.h"

namespace prismwright {

namespace {

class WorksTravellers : public WorksAct {
 public:
  std::string_view name() const override { return "travellers"; }
  std::string_view help() const override {
    return "the sheet that goes with each prism, or with a tray of them, through the shop, as PDF";
  }

  void configure(CLI::App& command) override {
    request_.paper = Paper::a5;
    add_paper_options(command, request_, {Paper::a5, Paper::a4, Paper::letter});
    command.add_flag("--tray", tray_, "one traveller for all of them together");
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    const auto desk = works_to_read(path, voice);
    if (!desk) return refuse(desk.problem(), voice.err);
    const auto marks = papers_marks(*desk, request_);
    if (!marks) return refuse(marks.problem(), voice.err);
    const PaperFacts facts{desk->plan, desk->book.ledger(), desk->book.works_log(), today_text()};
    const auto all = traveller_of(facts, *marks);
    if (!all) return refuse(all.problem(), voice.err);
    const auto drawing = tray_ ? traveller_sheets(*all, request_.paper) : sheet_of_each(*all);
    if (!drawing) return refuse(drawing.problem(), voice.err);
    return write_papers(*drawing, request_,
                        tray_ ? "1 traveller" : counted(marks->size(), "traveller", "travellers"), voice);
  }

 private:
  [[nodiscard]] Outcome<Drawing> sheet_of_each(const Traveller& all) const {
    Drawing drawing;
    drawing.title = all.title;
    drawing.date = all.date;
    for (const TravellerCasting& casting : all.castings) {
      auto own = traveller_sheets({all.title, all.date, all.pieces, {casting}}, request_.paper);
      if (!own) return own.problem();
      for (Sheet& sheet : own->sheets) drawing.sheets.push_back(std::move(sheet));
    }
    return drawing;
  }

  PapersRequest request_;
  bool tray_ = false;
};

}  // namespace

std::unique_ptr<WorksAct> works_travellers() { return std::make_unique<WorksTravellers>(); }

}  // namespace prismwright
