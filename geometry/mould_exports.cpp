#include "geometry/mould_exports.h"

#include <filesystem>

#include <fmt/format.h>

#include "geometry/safe_file.h"
#include "geometry/step_writer.h"
#include "geometry/stl_writer.h"

namespace prismwright {

namespace {

Done check(const MouldExportChoice& choice) {
  if (!choice.step && !choice.stl)
    return request_problem("nothing", "", "Nothing is asked for: choose STEP, STL or both.");
  return choice.stl ? check_stl_chord(choice.stl_chord_mm) : Done{};
}

class MouldWriter {
 public:
  MouldWriter(std::string folder, const MouldExportChoice& choice)
      : folder_(std::move(folder)), choice_(choice) {}

  Done write(const Mould& mould) {
    const std::string& mark = mould.facts.mark;
    if (choice_.step) {
      const std::vector<StepPart> parts = {{mark + "-lower", mould.lower, PartStuff::metal},
                                           {mark + "-upper", mould.upper, PartStuff::metal},
                                           {mark + "-master", mould.master, PartStuff::glass}};
      if (Done done = put(mark + "-mould.step", step_text(mark + "-mould", parts)); !done) return done;
    }
    if (!choice_.stl) return {};
    if (Done done =
            put(mark + "-mould-lower.stl", stl_bytes(mark + "-lower", mould.lower, choice_.stl_chord_mm));
        !done)
      return done;
    return put(mark + "-mould-upper.stl", stl_bytes(mark + "-upper", mould.upper, choice_.stl_chord_mm));
  }
  [[nodiscard]] const std::vector<std::string>& paths() const { return paths_; }

 private:
  Done put(const std::string& name, const Outcome<std::string>& bytes) {
    if (!bytes) return bytes.problem();
    const std::string path = (std::filesystem::path(folder_) / name).string();
    Done done = write_whole(path, *bytes);
    if (done) paths_.push_back(path);
    return done;
  }

  std::string folder_;
  const MouldExportChoice& choice_;
  std::vector<std::string> paths_;
};

}  // namespace

Outcome<std::vector<std::string>> export_moulds(const std::vector<MouldAnswer>& answers,
                                                const std::string& folder, const MouldExportChoice& choice,
                                                const Progress& progress) {
  if (const Done well = check(choice); !well) return well.problem();
  if (const Done ready = ready_folder(folder); !ready) return ready.problem();
  MouldWriter writer(folder, choice);
  for (std::size_t i = 0; i < answers.size(); ++i) {
    if (!goes_on(progress, static_cast<double>(i) / static_cast<double>(answers.size()), answers[i].mark)) {
      return Problem{Trouble::stopped, "stopped", "",
                     fmt::format("The export was stopped; {} files are written, each of them whole.",
                                 writer.paths().size())};
    }
    if (!answers[i].mould) continue;
    if (const Done done = writer.write(*answers[i].mould); !done) return done.problem();
  }
  goes_on(progress, 1, folder);
  return writer.paths();
}

}  // namespace prismwright
