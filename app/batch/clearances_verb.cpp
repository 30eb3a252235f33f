#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "app/batch/books.h"
#include "app/batch/json_print.h"
#include "app/batch/made_lens.h"
#include "app/batch/progress_line.h"
#include "app/batch/text_table.h"
#include "app/batch/verbs.h"
#include "geometry/clearances.h"

namespace prismwright {

namespace {

constexpr std::array kVerdicts = {Verdict::clear, Verdict::tight, Verdict::clash};

long count_of(const std::vector<Clearance>& pairs, Verdict verdict) {
  return std::ranges::count(pairs, verdict, &Clearance::verdict);
}

/// Clashes first, the largest common volume leading, then the smallest room to spare.
bool worse(const Clearance& a, const Clearance& b) {
  if (a.overlap_mm3 != b.overlap_mm3) return a.overlap_mm3 > b.overlap_mm3;
  return a.gap_mm - a.needed_mm < b.gap_mm - b.needed_mm;
}

Json pair_json(const Clearance& pair) {
  Json json;
  json["first"] = pair.first;
  json["second"] = pair.second;
  json["gap_mm"] = pair.gap_mm;
  json["needed_mm"] = pair.needed_mm;
  json["overlap_mm3"] = pair.overlap_mm3;
  json["verdict"] = name_of(pair.verdict);
  return json;
}

Json clearances_json(const std::vector<Clearance>& pairs, const std::vector<std::string>& notes) {
  Json json;
  json["counts"] = Json::object();
  for (const Verdict verdict : kVerdicts)
    json["counts"][std::string(name_of(verdict))] = count_of(pairs, verdict);
  json["pairs"] = Json::array();
  for (const Clearance& pair : pairs) json["pairs"].push_back(pair_json(pair));
  json["notes"] = notes;
  return json;
}

void print_pairs(const std::vector<Clearance>& pairs, std::size_t most, std::ostream& out) {
  TextTable table(
      {{"first"}, {"second"}, {"gap mm", true}, {"needed mm", true}, {"overlap mm3", true}, {"verdict"}});
  for (const Clearance& pair : pairs) {
    if (most-- == 0) break;
    table.add({pair.first, pair.second, fmt::format("{:.3f}", pair.gap_mm),
               fmt::format("{:.3f}", pair.needed_mm),
               pair.overlap_mm3 > 0 ? fmt::format("{:.3f}", pair.overlap_mm3) : "",
               std::string(name_of(pair.verdict))});
  }
  if (!table.empty()) table.print(out);
}

class ClearancesVerb : public Verb {
 public:
  std::string_view name() const override { return "clearances"; }
  std::string_view help() const override { return "the room between every two neighbouring parts"; }

  void configure(CLI::App& command) override {
    add_book_argument(command, path_);
    command.add_flag("--json", json_, "answer in JSON, every pair in the order of the plan");
    command.add_option("--tightest", most_, "show only so many pairs, the tightest ones")
        ->check(CLI::NonNegativeNumber);
  }

  ExitCode run(Voice& voice) override {
    const auto book = open_to_read(path_, voice);
    if (!book) return refuse(book.problem(), voice.err);
    const auto lens = make_prisms(*book, voice);
    if (!lens) return refuse(lens.problem(), voice.err);
    const auto frame = make_metal(lens->plan, voice);
    if (!frame) return refuse(frame.problem(), voice.err);
    auto pairs = find(*lens, *frame, voice);
    if (!pairs) return refuse(pairs.problem(), voice.err);
    return answer(std::move(pairs).value(), frame->plan.notes, voice);
  }

 private:
  static Outcome<std::vector<Clearance>> find(const MadePrisms& lens, const MadeFrame& frame, Voice& voice) {
    ProgressLine line(voice);
    return find_clearances(lens.plan, lens.bodies, frame.plan, frame.bodies, line.of("Clearances"));
  }

  [[nodiscard]] ExitCode answer(std::vector<Clearance> pairs, const std::vector<std::string>& notes,
                                Voice& voice) const {
    const long clashes = count_of(pairs, Verdict::clash);
    const ExitCode code = clashes > 0 ? ExitCode::not_well : ExitCode::done;
    if (json_) return print_json(clearances_json(pairs, notes), code, voice.out, voice.err);
    voice.out << fmt::format("{} pairs: {} clear, {} tight, {} clash.\n", pairs.size(),
                             count_of(pairs, Verdict::clear), count_of(pairs, Verdict::tight), clashes);
    std::ranges::stable_sort(pairs, worse);
    print_pairs(pairs, most_, voice.out);
    for (const std::string& note : notes) voice.out << note << '\n';
    return code;
  }

  std::string path_;
  bool json_ = false;
  std::size_t most_ = static_cast<std::size_t>(-1);
};

}  // namespace

std::unique_ptr<Verb> clearances_verb() { return std::make_unique<ClearancesVerb>(); }

}  // namespace prismwright
