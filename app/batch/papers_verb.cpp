#include <fmt/format.h>

#include <algorithm>

#include "app/batch/books.h"
#include "app/batch/despatch_ask.h"
#include "app/batch/json_print.h"
#include "app/batch/mark_patterns.h"
#include "app/batch/progress_line.h"
#include "app/batch/verbs.h"
#include "geometry/despatch/pack.h"
#include "geometry/despatch/piece_files.h"
#include "geometry/safe_file.h"

namespace prismwright {

namespace {

/// Until the list of papers stands, this share of the time has gone.
constexpr double kListed = 0.5;

class PapersVerb : public Verb {
 public:
  std::string_view name() const override { return "papers"; }
  std::string_view help() const override {
    return "drawings, light report, dossier and estimate alone, as PDF in one folder";
  }

  void configure(CLI::App& command) override {
    add_book_argument(command, path_);
    command.add_option("--out", folder_, "folder for the files; made where it is missing")->required();
    command.add_option("--only", only_, "papers of these names; * stands for any run of letters: \"prism-*\"");
    command.add_flag("--svg", svg_, "an SVG file for every sheet too");
    papers_.add_options(command);
    command.add_flag("--json", json_, "answer in JSON");
  }

  ExitCode run(Voice& voice) override {
    return at_despatch_desk(path_, papers_, voice, [&](DespatchDesk& desk) {
      PieceFiles files(folder_);
      if (const Done drawn = draw_all(desk, files, voice); !drawn) return refuse(drawn.problem(), voice.err);
      const auto paths = files.paths();
      if (!paths) return refuse(paths.problem(), voice.err);
      return tell(*paths, voice);
    });
  }

 private:
  Done draw_all(DespatchDesk& desk, PieceFiles& files, Voice& voice) {
    ProgressLine line(voice);
    const Progress progress = line.of("Papers");
    auto wanted = chosen(
        desk, [&](double share, std::string_view what) { return goes_on(progress, kListed * share, what); });
    if (!wanted) return wanted.problem();
    if (const Done ready = ready_folder(folder_); !ready) return ready;
    desk.expect(*wanted);
    for (std::size_t i = 0; i < wanted->size() && files.well(); ++i) {
      const DespatchPiece& piece = (*wanted)[i];
      const double share = static_cast<double>(i) / static_cast<double>(wanted->size());
      goes_on(progress, kListed + (1 - kListed) * share, piece.words);
      if (const Done drawn = draw(desk, piece, files); !drawn) return drawn;
    }
    return {};
  }

  /// What cannot be drawn is told, and the others are.
  Done draw(DespatchDesk& desk, const DespatchPiece& piece, PieceFiles& files) {
    std::string why = piece.withheld;
    if (why.empty()) {
      const auto drawing = desk.paper(piece);
      if (drawing) {
        files.put_drawing(piece.name, *drawing, svg_);
        return {};
      }
      if (drawing.problem().trouble != Trouble::request) return drawing.problem();
      why = drawing.problem().text;
    }
    undrawn_.push_back(piece.words + ": " + why);
    return {};
  }

  [[nodiscard]] Outcome<std::vector<DespatchPiece>> chosen(DespatchDesk& desk, const Progress& progress) const {
    auto pieces = desk.pieces(progress);
    if (!pieces) return pieces.problem();
    std::erase_if(*pieces, [](const DespatchPiece& piece) { return !piece.is_paper; });
    for (const std::string& pattern : only_) {
      if (std::ranges::any_of(*pieces, [&](const auto& piece) { return fits_pattern(pattern, piece.name); }))
        continue;
      return request_problem(
          "paper", pattern,
          fmt::format("No paper of this lens is called {}: names look like {}, and pack --list "
                      "shows them all.",
                      pattern, pieces->empty() ? "section" : pieces->front().name));
    }
    std::erase_if(*pieces, [&](const DespatchPiece& piece) {
      return !only_.empty() && std::ranges::none_of(only_, [&](const std::string& pattern) {
        return fits_pattern(pattern, piece.name);
      });
    });
    return pieces;
  }

  ExitCode tell(const std::vector<std::string>& paths, Voice& voice) const {
    const ExitCode code = undrawn_.empty() ? ExitCode::done : ExitCode::not_well;
    if (json_) {
      Json json;
      json["folder"] = folder_;
      json["files"] = paths;
      json["withheld"] = undrawn_;
      return print_json(json, code, voice.out, voice.err);
    }
    for (const std::string& sentence : undrawn_) voice.out << "Withheld: " << sentence << '\n';
    voice.out << fmt::format(
        "{} in {}\n", paths.size() == 1 ? "1 file lies" : fmt::format("{} files lie", paths.size()), folder_);
    return code;
  }

  std::string path_;
  std::string folder_;
  std::vector<std::string> only_;
  std::vector<std::string> undrawn_;
  PaperAsk papers_;
  bool svg_ = false;
  bool json_ = false;
};

}  // namespace

std::unique_ptr<Verb> papers_verb() { return std::make_unique<PapersVerb>(); }

}  // namespace prismwright
