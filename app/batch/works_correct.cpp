#include <fmt/format.h>

#include "app/batch/works_act.h"
#include "app/batch/works_desk.h"
#include "app/batch/works_steps.h"

namespace prismwright {

namespace {

class WorksCorrect : public WorksAct {
 public:
  std::string_view name() const override { return "correct"; }
  std::string_view help() const override {
    return "put right a step that was recorded by mistake: a new line with its reason";
  }

  void configure(CLI::App& command) override {
    command.add_option("MARK...", words_, "marks or numbers of castings, then the stage that is true")
        ->required()
        ->expected(2, 100000);
    command.add_option("--by", request_.by, "who found it");
    command.add_option("--note", request_.note, "what was wrong")->required();
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    const auto stage = read_stage(words_.back());
    if (!stage) return refuse(stage.problem(), voice.err);
    if (*stage == Stage::scrapped) {
      return refuse(
          request_problem("correct_to_scrapped", words_.back(),
                          "A casting is scrapped with works record, which keeps where it starts again."),
          voice.err);
    }
    auto desk = works_to_change(path, voice);
    if (!desk) return refuse(desk.problem(), voice.err);
    auto marks = marks_named(*desk, {words_.data(), words_.size() - 1});
    if (!marks) return refuse(marks.problem(), voice.err);
    request_.to = *stage;
    request_.marks = std::move(marks).value();
    if (request_.note.find_first_not_of(' ') != std::string::npos)
      request_.note = "correction: " + request_.note;
    return write_steps(*desk, request_, {}, voice);
  }

 private:
  std::vector<std::string> words_;
  StepRequest request_;
};

}  // namespace

std::unique_ptr<WorksAct> works_correct() { return std::make_unique<WorksCorrect>(); }

}  // namespace prismwright
