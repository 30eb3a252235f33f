#include <algorithm>
#include <array>
#include <map>
#include <utility>

#include "app/batch/books.h"
#include "app/batch/clearances_print.h"
#include "app/batch/made_lens.h"
#include "app/batch/progress_line.h"
#include "app/batch/verbs.h"
#include "geometry/clearance_csv.h"
#include "geometry/safe_file.h"

namespace prismwright {

namespace {

constexpr std::array kKinds = {ClearanceKind::prism_prism, ClearanceKind::prism_metal,
                               ClearanceKind::metal_metal, ClearanceKind::surroundings};

class ClearancesVerb : public Verb {
 public:
  std::string_view name() const override { return "clearances"; }
  std::string_view help() const override { return "the room between every two neighbouring parts"; }

  void configure(CLI::App& command) override {
    add_book_argument(command, path_);
    command.add_flag("--json", json_, "answer in JSON, every pair in the order of the plan");
    command.add_option("--csv", csv_, "write every pair to this file");
    command.add_option("--tightest", most_, "show only so many pairs, the tightest ones")
        ->check(CLI::NonNegativeNumber);
    std::map<std::string, ClearanceKind> kinds;
    for (const ClearanceKind kind : kKinds) kinds[std::string(name_of(kind))] = kind;
    command.add_option("--kind", kinds_, "only pairs of this kind; may be given again")
        ->transform(CLI::CheckedTransformer(kinds));
    command.add_flag("--door", door_, "turn the door from shut to open and say where it has least room");
  }

  ExitCode run(Voice& voice) override {
    const auto book = open_to_read(path_, voice);
    if (!book) return refuse(book.problem(), voice.err);
    const auto lens = make_prisms(*book, voice);
    if (!lens) return refuse(lens.problem(), voice.err);
    const auto frame = make_metal(lens->plan, voice);
    if (!frame) return refuse(frame.problem(), voice.err);
    if (door_ && !frame->plan.hinge) return refuse(no_door(), voice.err);
    auto answer = find(*lens, *frame, voice);
    if (!answer) return refuse(answer.problem(), voice.err);
    if (!csv_.empty()) {
      if (const Done written = write_whole(csv_, clearances_csv(answer->pairs)); !written)
        return refuse(written.problem(), voice.err);
    }
    const bool well =
        count_of(answer->pairs, Verdict::clash) == 0 && (!answer->door || answer->door->opens_enough);
    const ExitCode code = well ? ExitCode::done : ExitCode::not_well;
    if (json_) return print_json(clearances_json(*answer), code, voice.out, voice.err);
    print_clearances(std::move(answer).value(), most_, voice.out);
    return code;
  }

 private:
  static Problem no_door() {
    return request_problem(
        "door", "frame.door_panel",
        "This lens has no door to turn. Set frame.door_panel to the number of the panel that opens.");
  }

  Outcome<ClearanceAnswer> find(const MadePrisms& lens, const MadeFrame& frame, Voice& voice) const {
    ProgressLine line(voice);
    auto pairs = find_clearances(lens.plan, lens.bodies, frame.plan, frame.bodies, line.of("Clearances"));
    if (!pairs) return pairs.problem();
    ClearanceAnswer answer{std::move(pairs).value(), std::nullopt, lens.plan.values.frame.door_open_deg,
                           frame.plan.notes};
    if (!kinds_.empty()) {
      std::erase_if(answer.pairs, [&](const Clearance& pair) {
        return std::ranges::find(kinds_, pair.kind) == kinds_.end();
      });
    }
    if (!door_) return answer;
    auto door = sweep_door(lens.plan, lens.bodies, frame.plan, frame.bodies, line.of("Door"));
    if (!door) return door.problem();
    answer.door = *door;
    return answer;
  }

  std::string path_;
  std::string csv_;
  std::vector<ClearanceKind> kinds_;
  bool json_ = false;
  bool door_ = false;
  std::size_t most_ = static_cast<std::size_t>(-1);
};

}  // namespace

std::unique_ptr<Verb> clearances_verb() { return std::make_unique<ClearancesVerb>(); }

}  // namespace prismwright
