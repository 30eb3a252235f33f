#include <fmt/format.h>

#include "app/batch/works_act.h"
#include "app/batch/works_desk.h"
#include "app/batch/works_papers.h"
#include "core/works/traveller_facts.h"

namespace prismwright {

namespace {

class WorksLabels : public WorksAct {
 public:
  std::string_view name() const override { return "labels"; }
  std::string_view help() const override { return "sheets of labels with mark, number and QR code, as PDF"; }

  void configure(CLI::App& command) override {
    add_paper_options(command, request_, {Paper::a4, Paper::letter});
    command.add_option("--columns", settings_.columns, "labels side by side")->capture_default_str();
    command.add_option("--rows", settings_.rows, "labels one below another")->capture_default_str();
    command.add_option("--margin", settings_.margin_mm, "from the paper's edge to the labels, mm")
        ->capture_default_str();
    command.add_option("--gap", settings_.gap_mm, "between labels, mm")->capture_default_str();
    command.add_option("--used", settings_.used, "labels of the first sheet that are gone already")
        ->capture_default_str();
    command.add_flag("--cut-lines", settings_.cut_lines, "a thin frame round each, for plain paper");
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    const auto desk = works_to_read(path, voice);
    if (!desk) return refuse(desk.problem(), voice.err);
    const auto marks = papers_marks(*desk, request_);
    if (!marks) return refuse(marks.problem(), voice.err);
    settings_.paper = request_.paper;
    const PaperFacts facts{desk->plan, desk->book.ledger(), desk->book.works_log(), today_text()};
    auto drawing = label_sheets(desk->plan.values.brief.title, labels_of(facts, *marks), settings_);
    if (!drawing) return refuse(drawing.problem(), voice.err);
    drawing->date = facts.date;
    return write_papers(*drawing, request_, counted(marks->size(), "label", "labels"), voice);
  }

 private:
  PapersRequest request_;
  LabelSheetSettings settings_;
};

}  // namespace

std::unique_ptr<WorksAct> works_labels() { return std::make_unique<WorksLabels>(); }

}  // namespace prismwright
