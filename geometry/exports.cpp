#include "geometry/exports.h"

#include <algorithm>
#include <filesystem>

#include <fmt/format.h>

#include "geometry/safe_file.h"
#include "geometry/step_writer.h"
#include "geometry/stl_writer.h"

namespace prismwright {

namespace {

/// The whole lens takes about this share of the time when it is written too.
constexpr double kShareOfLens = 0.3;

Problem stopped(std::size_t written) {
  return {Trouble::stopped, "stopped", "",
          fmt::format("The export was stopped; {} files are written, each of them whole.", written)};
}

Done check_choice(const LensBodies& bodies, const ExportChoice& choice) {
  if (!choice.step && !choice.stl) {
    return request_problem("nothing", "", "Nothing is asked for: choose STEP, STL or both.");
  }
  if (choice.stl) {
    if (Done fit = check_stl_chord(choice.stl_chord_mm); !fit) return fit;
  }
  for (const std::string& mark : choice.only) {
    if (bodies.find(mark) == nullptr) {
      return request_problem("mark", mark,
                             fmt::format("There is no prism with the mark {}. Give marks as the list of prisms "
                                         "prints them, for instance P01-U03.",
                                         mark));
    }
  }
  return {};
}

class Export {
 public:
  Export(const LensBodies& bodies, const std::vector<FrameBody>& metal, std::string folder,
         const ExportChoice& choice, const Progress& progress)
      : bodies_(bodies), metal_(metal), folder_(std::move(folder)), choice_(choice), progress_(progress) {}

  Outcome<std::vector<std::string>> run() {
    if (const Done ready = ready_folder(folder_); !ready) return ready.problem();
    const auto prisms = chosen();
    const bool lens_too = choice_.step && choice_.only.empty();
    const double each =
        (lens_too ? 1 - kShareOfLens : 1.0) / static_cast<double>(std::max<std::size_t>(1, prisms.size()));
    for (std::size_t i = 0; i < prisms.size(); ++i) {
      if (!goes_on(progress_, each * static_cast<double>(i), prisms[i]->mark)) return stopped(paths_.size());
      if (const Done done = write_prism(*prisms[i]); !done) return done.problem();
    }
    if (lens_too) {
      if (!goes_on(progress_, 1 - kShareOfLens, "lens.step")) return stopped(paths_.size());
      if (const Done done = put("lens.step", step_text("lens", all_parts())); !done) return done.problem();
    }
    goes_on(progress_, 1, folder_);
    return std::move(paths_);
  }

 private:
  [[nodiscard]] std::vector<const PrismBody*> chosen() const {
    std::vector<const PrismBody*> prisms;
    for (const PrismBody& body : bodies_.prisms) {
      const auto& only = choice_.only;
      if (only.empty() || std::find(only.begin(), only.end(), body.mark) != only.end()) prisms.push_back(&body);
    }
    return prisms;
  }

  [[nodiscard]] std::vector<StepPart> all_parts() const {
    std::vector<StepPart> parts;
    for (const PrismBody& body : bodies_.prisms) parts.push_back({body.mark, body.shape, PartStuff::glass});
    for (const FrameBody& body : metal_) parts.push_back({body.mark, body.shape, PartStuff::metal});
    return parts;
  }

  Done write_prism(const PrismBody& body) {
    if (choice_.step) {
      const Done done = put(body.mark + ".step", step_text({body.mark, body.shape, PartStuff::glass}));
      if (!done) return done;
    }
    if (!choice_.stl) return {};
    return put(body.mark + ".stl", stl_bytes(body.mark, body.shape, choice_.stl_chord_mm));
  }

  Done put(const std::string& name, const Outcome<std::string>& bytes) {
    if (!bytes) return bytes.problem();
    const std::string path = (std::filesystem::path(folder_) / name).string();
    Done done = write_whole(path, *bytes);
    if (done) paths_.push_back(path);
    return done;
  }

  const LensBodies& bodies_;
  const std::vector<FrameBody>& metal_;
  std::string folder_;
  const ExportChoice& choice_;
  const Progress& progress_;
  std::vector<std::string> paths_;
};

}  // namespace

Outcome<std::vector<std::string>> export_bodies(const LensBodies& bodies, const std::vector<FrameBody>& metal,
                                                const std::string& folder, const ExportChoice& choice,
                                                const Progress& progress) {
  if (const Done well = check_choice(bodies, choice); !well) return well.problem();
  return Export(bodies, metal, folder, choice, progress).run();
}

}  // namespace prismwright
