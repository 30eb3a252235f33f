#include <fmt/format.h>

#include "app/batch/json_print.h"
#include "app/batch/progress_line.h"
#include "app/batch/works_act.h"
#include "app/batch/works_desk.h"
#include "geometry/works_exports.h"

namespace prismwright {

namespace {

/// What masters and moulds are both asked for.
struct SolidsRequest {
  std::string folder;
  std::vector<std::string> only;
  bool json = false;
};

void add_solids_options(CLI::App& command, SolidsRequest& request) {
  command.add_option("--out", request.folder, "folder for the files; made where it is missing")->required();
  command.add_option("--only", request.only, "these masters only, by the names of the make list");
  command.add_flag("--json", request.json, "answer in JSON");
}

ExitCode tell(const Outcome<WorksFiles>& files, const SolidsRequest& request, Voice& voice) {
  if (!files) return refuse(files.problem(), voice.err);
  const ExitCode code = files->well ? ExitCode::done : ExitCode::not_well;
  if (request.json) {
    Json json;
    json["files"] = files->paths;
    json["notes"] = files->notes;
    json["well"] = files->well;
    return print_json(json, code, voice.out, voice.err);
  }
  for (const std::string& note : files->notes) voice.out << note << '\n';
  voice.out << fmt::format(
      "{} in {}\n", files->paths.size() == 1 ? "1 file lies" : fmt::format("{} files lie", files->paths.size()),
      request.folder);
  return code;
}

class WorksMasters : public WorksAct {
 public:
  std::string_view name() const override { return "masters"; }
  std::string_view help() const override {
    return "masters, grown for shrinkage and sanding, laid for the printer, with sheets of what to measure";
  }

  void configure(CLI::App& command) override {
    add_solids_options(command, request_);
    command.add_flag("--step", step_, "STEP files only, unless --stl or --3mf are asked for too");
    command.add_flag("--stl", stl_, "STL files");
    command.add_flag("--3mf", three_mf_, "3MF files");
    command.add_flag("--inches", choice_.inches, "sheets in inches");
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    const auto desk = works_to_read(path, voice);
    if (!desk) return refuse(desk.problem(), voice.err);
    const bool all = !step_ && !stl_ && !three_mf_;
    choice_.files.step = all || step_;
    choice_.files.stl = all || stl_;
    choice_.files.three_mf = all || three_mf_;
    choice_.only = request_.only;
    choice_.date = today_text();
    const std::vector<Master> masters = masters_of(desk->plan);
    ProgressLine line(voice);
    return tell(export_masters(desk->plan, masters, request_.folder, choice_, line.of("Masters")), request_,
                voice);
  }

 private:
  SolidsRequest request_;
  MastersExportChoice choice_;
  bool step_ = false;
  bool stl_ = false;
  bool three_mf_ = false;
};

class WorksMoulds : public WorksAct {
 public:
  std::string_view name() const override { return "moulds"; }
  std::string_view help() const override {
    return "two-part moulds of the masters with gate, vents and pins, and sheets of what is undercut";
  }

  void configure(CLI::App& command) override {
    add_solids_options(command, request_);
    command.add_flag("--stl", choice_.files.stl, "the halves as STL too");
    command.add_flag("--inches", choice_.inches, "sheets in inches");
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    const auto desk = works_to_read(path, voice);
    if (!desk) return refuse(desk.problem(), voice.err);
    choice_.only = request_.only;
    choice_.date = today_text();
    const std::vector<Master> masters = masters_of(desk->plan);
    ProgressLine line(voice);
    return tell(export_master_moulds(desk->plan, masters, request_.folder, choice_, line.of("Moulds")),
                request_, voice);
  }

 private:
  SolidsRequest request_;
  MouldsExportChoice choice_;
};

}  // namespace

std::unique_ptr<WorksAct> works_masters() { return std::make_unique<WorksMasters>(); }
std::unique_ptr<WorksAct> works_moulds() { return std::make_unique<WorksMoulds>(); }

}  // namespace prismwright
