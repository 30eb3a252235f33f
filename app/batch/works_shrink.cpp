#include <fmt/format.h>

#include "app/batch/books.h"
#include "app/batch/json_print.h"
#include "app/batch/text_table.h"
#include "app/batch/works_act.h"
#include "app/batch/works_desk.h"
#include "core/works/congruence.h"
#include "core/works/shrink_fit.h"

namespace prismwright {

namespace {

Json optional_json(const std::optional<double>& value) { return value ? Json(*value) : Json(); }

class ShrinkRecord : public WorksAct {
 public:
  std::string_view name() const override { return "record"; }
  std::string_view help() const override { return "record a length of a master and of its casting"; }
  void configure(CLI::App& command) override {
    command.add_option("MASTER", reading_.piece, "name of the master: works make lists them")->required();
    command.add_option("DIRECTION", direction_, "length, depth or height")->required();
    command.add_option("MASTER_MM", reading_.master_mm, "measured on the master")->required();
    command.add_option("CASTING_MM", reading_.casting_mm, "the same measured on the casting")->required();
    command.add_option("--resin", reading_.resin, "works.resin unless said");
    command.add_option("--lot", reading_.resin_lot, "works.resin_batch unless said");
    add_hand_options(command, reading_.by, reading_.note, "a remark");
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    const auto direction = find_shrink_direction(direction_);
    if (!direction) {
      return refuse(
          request_problem("unknown_direction", direction_,
                          fmt::format("\"{}\" is no direction: use length, depth or height.", direction_)),
          voice.err);
    }
    reading_.direction = *direction;
    auto desk = works_to_change(path, voice);
    if (!desk) return refuse(desk.problem(), voice.err);
    if (!find_master(masters_of(desk->plan), reading_.piece)) {
      return refuse(request_problem("unknown_master", reading_.piece,
                                    fmt::format("{} is no master of this lens. Take a name from its make list.",
                                                reading_.piece)),
                    voice.err);
    }
    const WorksSettings& works = desk->plan.values.works;
    if (reading_.resin.empty()) reading_.resin = works.resin;
    if (reading_.resin_lot.empty()) reading_.resin_lot = works.resin_batch;
    WorksLog log;
    log.shrink.push_back(reading_);
    if (const Done kept = desk->book.record({}, log); !kept) return refuse(kept.problem(), voice.err);
    voice.out << fmt::format("{} of {}: shrunk by {:.3f} %.\n", direction_, reading_.piece,
                             100 * (1 - reading_.casting_mm / reading_.master_mm));
    return ExitCode::done;
  }

 private:
  ShrinkReading reading_;
  std::string direction_;
};

std::string percent_text(const std::optional<double>& value) {
  return value ? fmt::format("{:.3f}", *value) : "";
}

Json factor_json(const ShrinkFactor& factor) {
  Json json;
  json["direction"] = name_of(factor.direction);
  json["readings"] = factor.count;
  json["percent"] = optional_json(factor.percent);
  json["standard_percent"] = optional_json(factor.standard_percent);
  json["low_percent"] = optional_json(factor.low_percent);
  json["high_percent"] = optional_json(factor.high_percent);
  json["scatter_mm"] = optional_json(factor.scatter_mm);
  json["of_lot"] = factor.of_lot;
  json["usable"] = factor.usable();
  json["outliers"] = Json::array();
  for (const ShrinkPoint& point : factor.points) {
    if (point.outlier) json["outliers"].push_back(point.number);
  }
  json["note"] = factor.note;
  return json;
}

Json fits_json(const std::vector<ShrinkFit>& fits) {
  Json json = Json::array();
  for (const ShrinkFit& fit : fits) {
    Json one;
    one["resin"] = fit.resin;
    one["resin_lot"] = fit.resin_lot;
    one["factors"] = Json::array();
    for (const ShrinkFactor& factor : fit.factors) one["factors"].push_back(factor_json(factor));
    json.push_back(one);
  }
  return json;
}

void print_fits(const std::vector<ShrinkFit>& fits, std::ostream& out) {
  TextTable table({{"resin"},
                   {"lot"},
                   {"direction"},
                   {"readings", true},
                   {"shrinks %", true},
                   {"uncertainty %", true},
                   {"from %", true},
                   {"to %", true}});
  for (const ShrinkFit& fit : fits) {
    for (const ShrinkFactor& factor : fit.factors) {
      table.add({fit.resin, fit.resin_lot, std::string(name_of(factor.direction)), std::to_string(factor.count),
                 percent_text(factor.percent), percent_text(factor.standard_percent),
                 percent_text(factor.low_percent), percent_text(factor.high_percent)});
    }
  }
  if (table.empty()) {
    out << "No lengths are recorded yet: works shrink record takes them.\n";
    return;
  }
  table.print(out);
  for (const ShrinkFit& fit : fits) {
    for (const ShrinkFactor& factor : fit.factors) {
      if (!factor.note.empty()) out << factor.note << '\n';
    }
  }
}

class ShrinkFitAct : public WorksAct {
 public:
  std::string_view name() const override { return "fit"; }
  std::string_view help() const override {
    return "shrinkage by direction with its uncertainty, for every resin and lot; --take lets the masters use "
           "it";
  }
  void configure(CLI::App& command) override {
    add_answer_options(command, form_);
    command.add_flag("--take", take_, "the next masters use what was fitted: sets works.shrink_...");
    command.add_option("--resin", resin_, "--take: of this resin (works.resin unless said)");
    command.add_option("--lot", lot_, "--take: of this lot (works.resin_batch unless said)");
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    if (take_) return take(path, voice);
    const auto book = open_to_read(path, voice);
    if (!book) return refuse(book.problem(), voice.err);
    const std::vector<ShrinkFit> fits = fit_all_shrinkage(book->works_log().shrink);
    if (const Done kept = keep_csv(form_, shrink_csv(fits)); !kept) return refuse(kept.problem(), voice.err);
    if (form_.json) return print_json(fits_json(fits), ExitCode::done, voice.out, voice.err);
    print_fits(fits, voice.out);
    return ExitCode::done;
  }

 private:
  ExitCode take(const std::string& path, Voice& voice) {
    auto book = open_to_change(path, voice);
    if (!book) return refuse(book.problem(), voice.err);
    const LensValues before = book->values();
    const ShrinkFit fit = fit_shrinkage(book->works_log().shrink, resin_.empty() ? before.works.resin : resin_,
                                        lot_.empty() ? before.works.resin_batch : lot_);
    const std::vector<Assignment> edits = shrink_assignments(fit);
    if (edits.empty()) {
      return refuse(request_problem("few_readings", "works.shrink",
                                    fmt::format("No direction has the {} readings that a factor is taken from. "
                                                "Record more lengths with works shrink record.",
                                                kLeastShrinkReadings)),
                    voice.err);
    }
    const auto after = with_assignments(before, edits);
    if (!after) return refuse(after.problem(), voice.err);
    const std::string words = edit_words(before, *after);
    if (words.empty()) {
      voice.out << "The masters use these factors already.\n";
      return ExitCode::done;
    }
    if (const Done done = book->edit(*after, words); !done) return refuse(done.problem(), voice.err);
    voice.out << words << '\n';
    return ExitCode::done;
  }

  AnswerForm form_;
  bool take_ = false;
  std::string resin_;
  std::string lot_;
};

}  // namespace

std::unique_ptr<WorksAct> works_shrink() {
  std::vector<std::unique_ptr<WorksAct>> acts;
  acts.push_back(std::make_unique<ShrinkRecord>());
  acts.push_back(std::make_unique<ShrinkFitAct>());
  return std::make_unique<WorksGroup>("shrink", "shrinkage learned from measured lengths: record, fit, take",
                                      std::move(acts));
}

}  // namespace prismwright
