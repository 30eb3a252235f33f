#include <fmt/format.h>

#include <algorithm>

#include "core/lens/choice_words.h"
#include "core/papers/dossier_parts.h"
#include "core/papers/lens_facts.h"
#include "core/papers/proof_section.h"
#include "core/works/inspection.h"

namespace prismwright {

namespace {

using Cells = DocumentPages::Cells;

constexpr std::size_t kDayLetters = 10;

void write_fit(DossierDesk& desk) {
  const DossierFacts& facts = desk.facts;
  desk.pages.section("Fit of prisms and brass", 12);
  if (!facts.clearances_known) {
    desk.pages.paragraph("The clearances between prisms and brass were not worked out for this dossier.");
    return;
  }
  const std::string least =
      facts.tightest_mm ? fmt::format("By the solids as drawn, the least gap is {} {}{}.",
                                      desk.lengths.plain(*facts.tightest_mm), desk.lengths.unit(),
                                      facts.tightest_between.empty() ? "" : ": " + facts.tightest_between)
                        : "By the solids as drawn, no two parts that must stand apart come near each other.";
  const std::string clashes = facts.clashes == 0 ? "Nothing clashes."
                                                 : counted_words(static_cast<std::size_t>(facts.clashes),
                                                                 "pair clashes", "pairs clash") +
                                                       ": these must be settled before the lens is lit.";
  const std::string tight =
      facts.tight == 0 ? ""
                       : " " + counted_words(static_cast<std::size_t>(facts.tight), "pair has", "pairs have") +
                             " less room than setting, heat and moisture ask for.";
  desk.pages.paragraph(fmt::format("{} {}{}", least, clashes, tight));
}

void write_decisions(DossierDesk& desk, const WorksLog& log) {
  std::vector<Cells> rows;
  for (const Decision& decision : log.decisions)
    rows.push_back({decision.mark, decision.serial == 0 ? "" : std::to_string(decision.serial),
                    std::string(word_of(decision.kind)), decision.when_utc.substr(0, kDayLetters),
                    decision.note});
  if (rows.empty()) return;
  desk.pages.paragraph("What was decided on castings that were out of tolerance:");
  desk.pages.table(
      {{"mark", 0.12}, {"casting", 0.1, true}, {"decision", 0.11}, {"date", 0.14}, {"reason", 0.53}}, rows);
}

void write_measured(DossierDesk& desk) {
  const DossierFacts& facts = desk.facts;
  desk.pages.section("Castings measured against the drawing", 12);
  if (facts.log == nullptr || facts.log->measurements.empty()) {
    desk.pages.paragraph("No measurement of a casting is recorded.");
  } else {
    const auto prisms =
        inspect(facts.plan, {facts.log->measurements, facts.log->decisions, facts.ledger, {}, nullptr});
    const InspectionSummary sum = summary_of(prisms);
    desk.pages.paragraph(
        fmt::format("{} recorded; of the castings that stand in the lens {} were measured, and {} have a "
                    "measure out of tolerance that "
                    "no decision settles.",
                    counted_words(facts.log->measurements.size(), "measurement is", "measurements are"),
                    sum.measured, sum.out == 0 ? std::string("none") : std::to_string(sum.out)));
  }
  if (facts.log != nullptr) write_decisions(desk, *facts.log);
}

}  // namespace

void write_proved(DossierDesk& desk) {
  DocumentPages& pages = desk.pages;
  pages.turn_page();
  pages.chapter("How it was proved", 40);
  pages.section("The section, ray by ray", 20);
  if (desk.facts.proof != nullptr) {
    write_proof(pages, desk.facts.plan, *desk.facts.proof, desk.lengths);
  } else {
    pages.paragraph("The proof of the section was not worked out for this dossier.");
  }
  write_fit(desk);
  write_measured(desk);
  write_bench(desk);
  write_not_done(desk);
}

}  // namespace prismwright
