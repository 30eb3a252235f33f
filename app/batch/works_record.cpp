#include <fmt/format.h>

#include <algorithm>

#include "app/batch/works_act.h"
#include "app/batch/works_desk.h"
#include "app/batch/works_steps.h"

namespace prismwright {

namespace {

class WorksRecord : public WorksAct {
 public:
  std::string_view name() const override { return "record"; }
  std::string_view help() const override { return "record a step for one prism or many, all or none"; }

  void configure(CLI::App& command) override {
    command
        .add_option(
            "MARK...", words_,
            "marks, numbers of castings or scanned codes, then the stage reached; * stands for any run of "
            "letters: \"P01-*\"")
        ->required()
        ->expected(2, 100000);
    add_hand_options(command, request_.by, request_.note,
                     "needed where a step is skipped or gone back, and for scrap");
    command.add_option("--back-to", back_to_, "scrapped: the stage to start again from (moulded unless said)");
    configure_load(command);
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    if (const Done read = read_words(); !read) return refuse(read.problem(), voice.err);
    auto desk = works_to_change(path, voice);
    if (!desk) return refuse(desk.problem(), voice.err);
    auto marks = marks_named(*desk, {words_.data(), words_.size() - 1});
    if (!marks) return refuse(marks.problem(), voice.err);
    request_.marks = std::move(marks).value();
    if (const Done known = check_load_number(*desk); !known) return refuse(known.problem(), voice.err);
    std::optional<VesselLoad> load;
    if (names_a_new_load()) load = new_load(desk->plan.values.works);
    return write_steps(*desk, request_, load, voice);
  }

 private:
  void configure_load(CLI::App& command) {
    CLI::Option* number =
        command.add_option("--load", request_.load, "cast: the number of a load recorded before")
            ->check(CLI::Range(1LL, 1'000'000'000LL));
    given_.push_back(
        command.add_flag("--new-load", new_load_, "cast: a new load, resin and tint as the settings say"));
    const auto own = [&](const char* option, auto& place, const char* help) {
      given_.push_back(command.add_option(option, place, help));
    };
    own("--resin", load_.resin, "cast: a new load of this resin (works.resin unless said)");
    own("--lot", load_.resin_lot, "cast: a new load of this lot (works.resin_batch unless said)");
    own("--tint", load_.tint, "cast: a new load with this tint (works.tint_name unless said)");
    own("--resin-g", load_.resin_g, "cast: resin poured into the new load, g");
    own("--initiator-g", load_.initiator_g, "cast: initiator in it, g");
    own("--tint-g", load_.tint_g, "cast: tint in it, g");
    for (CLI::Option* option : given_) option->excludes(number);
  }

  Done read_words() {
    const auto stage = read_stage(words_.back());
    if (!stage) return stage.problem();
    request_.to = *stage;
    if (!back_to_.empty()) {
      const auto back = read_stage(back_to_);
      if (!back) return back.problem();
      request_.back_to = *back;
    }
    if (request_.to != Stage::cast && (request_.load != 0 || names_a_new_load()))
      return request_problem("load_without_cast", words_.back(),
                             fmt::format("A load belongs to cast, not to {}. Leave it out.", words_.back()));
    if (names_a_new_load()) request_.load = Lensbook::kNewLoad;
    return {};
  }

  [[nodiscard]] bool names_a_new_load() const {
    return std::ranges::any_of(given_, [](const CLI::Option* option) { return option->count() > 0; });
  }

  [[nodiscard]] Done check_load_number(const WorksDesk& desk) const {
    if (request_.load <= 0) return {};
    const auto& loads = desk.book.works_log().loads;
    if (std::ranges::find(loads, request_.load, &VesselLoad::number) != loads.end()) return {};
    return request_problem("unknown_load", std::to_string(request_.load),
                           loads.empty()
                               ? fmt::format("No load {} was recorded, nor any other. Record a new one "
                                             "with --lot or --new-load.",
                                             request_.load)
                               : fmt::format("No load {} was recorded; the last is {}. Name one of those, "
                                             "or record a new one with --lot or --new-load.",
                                             request_.load, loads.back().number));
  }

  [[nodiscard]] VesselLoad new_load(const WorksSettings& works) const {
    VesselLoad load = load_;
    if (load.resin.empty()) load.resin = works.resin;
    if (load.resin_lot.empty()) load.resin_lot = works.resin_batch;
    if (load.tint.empty()) load.tint = works.tint_name;
    load.by = request_.by;
    load.note = request_.note;
    return load;
  }

  std::vector<std::string> words_;
  std::string back_to_;
  StepRequest request_;
  VesselLoad load_;
  bool new_load_ = false;
  std::vector<CLI::Option*> given_;  ///< options that each make a new load
};

}  // namespace

std::unique_ptr<WorksAct> works_record() { return std::make_unique<WorksRecord>(); }

}  // namespace prismwright
