#include <sstream>

#include "app/batch/json_print.h"
#include "app/batch/section_act.h"
#include "app/batch/section_draw.h"

namespace prismwright {

namespace {

class SectionDrawAct : public SectionAct {
 public:
  std::string_view name() const override { return "draw"; }
  std::string_view help() const override { return "the section as a dimensioned drawing: SVG, PDF or DXF"; }
  void configure(CLI::App& command) override {
    add_section_draw_options(command, request_);
    command.add_flag("--json", json_, "answer in JSON");
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    request_.book = path;
    if (!json_) return section_draw(request_, voice);
    std::stringstream written;
    Voice aside{written, voice.err, voice.watched};
    const ExitCode code = section_draw(request_, aside);
    if (code == ExitCode::bad_request || code == ExitCode::file_trouble) return code;
    Json answer;
    answer["files"] = Json::array();
    for (std::string file; std::getline(written, file);) answer["files"].push_back(file);
    return print_json(answer, code, voice.out, voice.err);
  }

 private:
  SectionDrawRequest request_;
  bool json_ = false;
};

}  // namespace

std::unique_ptr<SectionAct> section_draw_act() { return std::make_unique<SectionDrawAct>(); }

}  // namespace prismwright
