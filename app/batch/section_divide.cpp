#include <fmt/format.h>

#include "app/batch/section_act.h"
#include "app/batch/section_change.h"
#include "core/lens/choice_words.h"

namespace prismwright {

namespace {

Outcome<Division> read_division(const std::string& text) {
  for (const Division division :
       {Division::count, Division::area, Division::height, Division::thickness, Division::side}) {
    if (word_of(division) == text) return division;
  }
  return request_problem(
      "division.unknown", text,
      fmt::format("no band can be divided by '{}'. Give count, area, height, thickness or side", text));
}

bool counts(Division division) {
  return division == Division::count || division == Division::area || division == Division::height;
}

Outcome<double> read_size(const std::string& text, Division division) {
  const char* unit = counts(division) ? "" : "mm";
  if (const auto number = read_number(text, unit)) return *number;
  return request_problem(
      "value.unreadable", text,
      fmt::format("'{}' cannot be read. Give {}", text,
                  counts(division) ? "how many zones, for instance 8" : "a length in mm, for instance 18"));
}

class SectionDivide : public SectionAct {
 public:
  std::string_view name() const override { return "divide"; }
  std::string_view help() const override { return "divide a band anew; locked zones stay"; }

  void configure(CLI::App& command) override {
    command.add_option("BAND", band_, "refracting, upper or lower")->required();
    command
        .add_option(
            "--by", rule_,
            "count, area, height: equal zones; thickness: none thicker; side: of one entry side (prisms)")
        ->required();
    command
        .add_option(
            "NUMBER", number_,
            "how many zones (count, area, height), or a length in mm (thickness, side); may carry its unit")
        ->required();
    command.add_flag("--json", json_, "answer in JSON");
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    const auto band = read_band(band_);
    if (!band) return refuse(band.problem(), voice.err);
    const auto division = read_division(rule_);
    if (!division) return refuse(division.problem(), voice.err);
    const auto number = read_size(number_, *division);
    if (!number) return refuse(number.problem(), voice.err);
    return change_section(path, json_, voice, [&](const LensValues& values, const Section& section) {
      return divide_band(values, section, *band, *division, *number);
    });
  }

 private:
  std::string band_;
  std::string rule_;
  std::string number_;
  bool json_ = false;
};

}  // namespace

std::unique_ptr<SectionAct> section_divide() { return std::make_unique<SectionDivide>(); }

}  // namespace prismwright
