#include <fmt/format.h>

#include "core/papers/dossier_parts.h"
#include "core/papers/lens_facts.h"

namespace prismwright {

namespace {

using Cells = DocumentPages::Cells;

constexpr std::size_t kDayLetters = 10;

std::vector<Cells> rows_of(const DossierDesk& desk) {
  std::vector<Cells> rows;
  for (const BenchedPrism& prism : desk.state.benched) {
    if (!prism.now) continue;
    rows.push_back({prism.aim->mark, prism.last->when_utc.substr(0, kDayLetters),
                    desk.lengths.plain(prism.last->height_mm), desk.lengths.plain(prism.last->aside_mm),
                    decimals(prism.before->off_deg(), 3), decimals(prism.now->off_deg(), 3), prism.now->words});
  }
  return rows;
}

}  // namespace

void write_bench(DossierDesk& desk) {
  DocumentPages& pages = desk.pages;
  pages.section("Bench readings, prism by prism", 20);
  if (desk.facts.bench == nullptr) {
    pages.paragraph(
        desk.facts.readings.empty()
            ? "No reading of the laser bench is recorded."
            : fmt::format("{} of the laser bench recorded, but the bench was not worked out for this dossier, "
                          "so they are not judged here.",
                          counted_words(desk.facts.readings.size(), "reading is", "readings are")));
    return;
  }
  const BenchSummary& sum = desk.state.bench;
  if (sum.read == 0) {
    pages.paragraph(fmt::format("None of the {} prisms was read on the laser bench.", sum.prisms));
    return;
  }
  pages.paragraph(
      fmt::format("A laser in the focus was aimed at each prism and its spot read on a board. {} of {} prisms "
                  "were read; by their last "
                  "readings {} send the beam within {} degrees of where it should go. Root mean square {} "
                  "degrees by the first readings, "
                  "{} by the last.",
                  sum.read, sum.prisms, sum.within, shortest(kBenchWithin_deg), decimals(sum.rms_before_deg, 3),
                  decimals(sum.rms_now_deg, 3)));
  const std::string unit = desk.lengths.unit();
  pages.table({{"mark", 0.12},
               {"last read", 0.15},
               {"spot up, " + unit, 0.11, true},
               {"spot left, " + unit, 0.11, true},
               {"off at first deg", 0.12, true},
               {"off at last deg", 0.12, true},
               {"what the last reading asks for", 0.27}},
              rows_of(desk));
}

namespace {

std::string stage_list(const DossierState& state) {
  std::string words;
  for (const Stage stage : kStages) {
    if (stage == Stage::glazed || state.at(stage) == 0) continue;
    words += fmt::format("{}{} {}", words.empty() ? "" : ", ", state.at(stage), name_of(stage));
  }
  return words;
}

void add_castings(const DossierState& state, std::vector<std::string>& points) {
  std::size_t without_number = 0, without_load = 0;
  for (const std::string& mark : state.marks) {
    const Stage stage = state.now.stage_of(mark);
    if (stage < Stage::cast || stage == Stage::scrapped) continue;
    if (state.serial_of(mark) == 0) ++without_number;
    if (state.load_of_mark(mark) == 0) ++without_load;
  }
  if (without_number > 0)
    points.push_back(counted_words(without_number, "prism has", "prisms have") +
                     " no casting number on record.");
  if (without_load > 0)
    points.push_back(
        fmt::format("For {} no vessel load is recorded, so resin and lot are not known casting by casting.",
                    counted_words(without_load, "casting", "castings")));
}

void add_bench(const DossierDesk& desk, std::vector<std::string>& points) {
  const BenchSummary& sum = desk.state.bench;
  if (desk.facts.bench == nullptr) {
    points.push_back(desk.facts.readings.empty() ? "No prism was read on the laser bench."
                                                 : "The readings of the laser bench were not judged.");
    return;
  }
  if (sum.read < sum.prisms)
    points.push_back(
        fmt::format("{} of {} prisms have no reading of the laser bench.", sum.prisms - sum.read, sum.prisms));
  if (sum.within < sum.read)
    points.push_back(fmt::format("{} of the {} prisms read are not within {} degrees by their last reading.",
                                 sum.read - sum.within, sum.read, shortest(kBenchWithin_deg)));
}

}  // namespace

void write_not_done(DossierDesk& desk) {
  const DossierFacts& facts = desk.facts;
  std::vector<std::string> points;
  const int left = desk.state.counts.total - desk.state.at(Stage::glazed);
  if (left > 0)
    points.push_back(fmt::format("{} of {} prisms are not glazed: {}.", left, desk.state.counts.total,
                                 stage_list(desk.state)));
  add_bench(desk, points);
  if (facts.log == nullptr || facts.log->measurements.empty())
    points.emplace_back("No casting was measured against its drawing, as far as the record tells.");
  add_castings(desk.state, points);
  if (facts.clashes > 0)
    points.push_back(counted_words(static_cast<std::size_t>(facts.clashes), "clash stands", "clashes stand") +
                     " between solids as drawn.");
  if (facts.tight > 0)
    points.push_back(counted_words(static_cast<std::size_t>(facts.tight), "pair stands", "pairs stand") +
                     " nearer to each other than setting, heat and moisture ask for, as drawn.");
  if (!facts.clearances_known) points.emplace_back("Clearances were not worked out.");
  if (facts.proof == nullptr) points.emplace_back("The section was not proved.");
  if (facts.proof != nullptr)
    points.emplace_back(
        "The proof of the section is of the section as drawn, from a point in the focus, and not of the "
        "finished prisms.");
  points.emplace_back(
      facts.light == nullptr
          ? "The light was not worked out."
          : "Beam, range, colour and character are reckoned from the drawing and the lamp as entered. No "
            "measurement of the finished light is recorded here.");
  desk.pages.section("What was not measured or not finished", 24);
  desk.pages.points(points);
}

}  // namespace prismwright
