#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "core/papers/dossier_parts.h"
#include "core/papers/lens_facts.h"

namespace prismwright {

namespace {

using Cells = DocumentPages::Cells;

constexpr std::size_t kDayLetters = 10;

std::string or_not(const std::string& words) { return words.empty() ? "not entered" : words; }

void write_material(DossierDesk& desk) {
  const LensValues& values = desk.facts.plan.values;
  const WorksSettings& works = values.works;
  std::vector<DocumentPages::Fact> facts = {
      {"Prisms", values.material.name},
      {"Index at 587.6 nm",
       fmt::format("{:.5f}, {}", values.material.index_at(587.6),
                   values.material.index ? "measured on the batch" : "from the published formula")},
      {"Density", fmt::format("{} g/cm3", shortest(values.material.density_g_cm3))},
      {"Resin, as entered for the works", or_not(works.resin)},
      {"Lot, as entered for the works", or_not(works.resin_batch)},
      {"Tint", works.tint_percent > 0
                   ? fmt::format("{} % {}", shortest(works.tint_percent), or_not(works.tint_name))
                   : "none"},
      {desk.state.at(Stage::annealed) + desk.state.at(Stage::polished) + desk.state.at(Stage::proved) +
                   desk.state.at(Stage::glazed) >
               0
           ? "Annealed at"
           : "To be annealed at",
       fmt::format("{} C", shortest(works.anneal_c))},
      {"Frame", "brass"},
      {"Gap round a prism's end",
       fmt::format("{} {}", desk.lengths.plain(values.frame.setting_gap_mm), desk.lengths.unit())},
      {"Glazing compound, least",
       fmt::format("{} {}", desk.lengths.plain(values.frame.glazing_mm), desk.lengths.unit())}};
  desk.pages.facts(facts);
}

/// Numbers of the castings that stand in the lens, by their load; 0: none recorded.
std::map<long long, std::vector<long long>> castings_by_load(const DossierState& state) {
  std::map<long long, std::vector<long long>> by_load;
  for (const std::string& mark : state.marks) {
    const Stage stage = state.now.stage_of(mark);
    const long long serial = state.serial_of(mark);
    if (serial != 0 && stage >= Stage::cast && stage != Stage::scrapped)
      by_load[state.load_of_mark(mark)].push_back(serial);
  }
  for (auto& [load, serials] : by_load) {
    std::ranges::sort(serials);
    serials.erase(std::unique(serials.begin(), serials.end()), serials.end());
  }
  return by_load;
}

Cells load_row(const VesselLoad* load, long long number, const std::vector<long long>& serials) {
  if (load == nullptr)
    return {number == 0 ? "none" : std::to_string(number),
            "",
            "not recorded",
            "not recorded",
            "",
            number_ranges(serials)};
  return {std::to_string(number),
          load->when_utc.substr(0, kDayLetters),
          or_not(load->resin),
          or_not(load->resin_lot),
          load->tint,
          number_ranges(serials)};
}

}  // namespace

std::string number_ranges(const std::vector<long long>& numbers) {
  std::string words;
  for (std::size_t i = 0; i < numbers.size();) {
    std::size_t last = i;
    while (last + 1 < numbers.size() && numbers[last + 1] == numbers[last] + 1) ++last;
    words += fmt::format("{}{}", words.empty() ? "" : ", ", numbers[i]);
    if (last > i) words += fmt::format("-{}", numbers[last]);
    i = last + 1;
  }
  return words;
}

void write_made_of(DossierDesk& desk) {
  DocumentPages& pages = desk.pages;
  pages.chapter("What it is made of", 60);
  write_material(desk);
  pages.section("Castings by number, with resin and lot", 24);
  const auto by_load = castings_by_load(desk.state);
  if (by_load.empty()) {
    pages.paragraph("No numbered casting stands in the lens by the works record.");
    return;
  }
  std::vector<Cells> rows;
  for (const auto& [number, serials] : by_load) {
    const VesselLoad* load = nullptr;
    if (desk.facts.log != nullptr) {
      const auto found = std::ranges::find(desk.facts.log->loads, number, &VesselLoad::number);
      if (found != desk.facts.log->loads.end()) load = &*found;
    }
    rows.push_back(load_row(load, number, serials));
  }
  pages.table({{"load", 0.08, true},
               {"poured", 0.13},
               {"resin", 0.21},
               {"lot", 0.16},
               {"tint", 0.1},
               {"castings in the lens", 0.32}},
              rows);
  pages.note("The list of prisms at the end gives the casting of every mark, and the load it was poured in.");
}

}  // namespace prismwright
