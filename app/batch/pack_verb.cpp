#include <fmt/format.h>

#include <algorithm>

#include "app/batch/books.h"
#include "app/batch/despatch_ask.h"
#include "app/batch/pack_print.h"
#include "app/batch/progress_line.h"
#include "app/batch/verbs.h"

namespace prismwright {

namespace {

std::vector<std::string> group_names() {
  std::vector<std::string> names;
  for (int i = 0; i < kDespatchGroups; ++i) names.emplace_back(name_of(static_cast<DespatchGroup>(i)));
  return names;
}

class PackVerb : public Verb {
 public:
  std::string_view name() const override { return "pack"; }
  std::string_view help() const override {
    return "everything that leaves the workshop, in one dated folder with an index page and sums";
  }

  void configure(CLI::App& command) override {
    add_book_argument(command, path_);
    command.add_option("--out", ask_.packs_folder, "folder of packs, in which a dated one is made")->required();
    command.add_option("--only", groups_, "these groups only")->check(CLI::IsMember(group_names()));
    papers_.add_options(command);
    command.footer(
        "What is said of the estimate is kept with the pack, and the next one of the book in that folder takes "
        "it "
        "up where nothing else is said; an empty word (\"\") clears it.");
    command.add_flag("--list", list_,
                     "write nothing: say what would go out, and how it stands to the last pack");
    command.add_flag("--json", json_, "answer in JSON");
  }

  ExitCode run(Voice& voice) override {
    for (const std::string& group : groups_) ask_.groups.push_back(*find_despatch_group(group));
    return at_despatch_desk(path_, papers_, voice, [&](DespatchDesk& desk) {
      const auto found = last_pack(ask_.packs_folder, desk.source().book_name);
      const LastPack* last = found ? &*found : nullptr;
      desk.set_choice(papers_.choice_after(last));
      return list_ ? list(desk, last, voice) : pack(desk, papers_.remembered(last), voice);
    });
  }

 private:
  ExitCode pack(DespatchDesk& desk, const std::vector<std::string>& remembered, Voice& voice) const {
    const auto report = [&] {
      ProgressLine line(voice);
      return write_pack(desk, ask_, line.of("Pack"));
    }();
    if (!report) return refuse(report.problem(), voice.err);
    const ExitCode code = report->well ? ExitCode::done : ExitCode::not_well;
    if (json_) return print_json(pack_json(*report, remembered), code, voice.out, voice.err);
    print_pack(*report, remembered, voice.out);
    return code;
  }

  ExitCode list(DespatchDesk& desk, const LastPack* last, Voice& voice) const {
    auto pieces = [&] {
      ProgressLine line(voice);
      return desk.pieces(line.of("Pieces"));
    }();
    if (!pieces) return refuse(pieces.problem(), voice.err);
    if (!ask_.groups.empty()) {
      std::erase_if(*pieces, [&](const DespatchPiece& piece) {
        return std::ranges::find(ask_.groups, piece.group) == ask_.groups.end();
      });
    }
    const bool well = std::ranges::all_of(*pieces, [](const auto& piece) { return piece.withheld.empty(); });
    const ExitCode code = well ? ExitCode::done : ExitCode::not_well;
    const LensValues& values = desk.source().plan->values;
    const auto remembered = papers_.remembered(last);
    if (json_) return print_json(despatch_json(*pieces, last, values, remembered), code, voice.out, voice.err);
    print_despatch(*pieces, last, values, remembered, voice.out);
    return code;
  }

  std::string path_;
  std::vector<std::string> groups_;
  PackAsk ask_;
  PaperAsk papers_;
  bool list_ = false;
  bool json_ = false;
};

}  // namespace

std::unique_ptr<Verb> pack_verb() { return std::make_unique<PackVerb>(); }

}  // namespace prismwright
