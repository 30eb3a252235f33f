#include "core/papers/proof_section.h"

#include <fmt/format.h>

namespace prismwright {

namespace {

using Cells = DocumentPages::Cells;

std::string dark_words(const Proof& proof, const LengthWords& lengths) {
  double dark_mm = 0;
  for (const BeamStrip& strip : proof.dark_strips) dark_mm += strip.to_mm - strip.from_mm;
  if (proof.dark_strips.empty()) return "none";
  return fmt::format("{}, {} {} in all", proof.dark_strips.size(), lengths.plain(dark_mm), lengths.unit());
}

void write_fates(DocumentPages& pages, const Proof& proof) {
  std::vector<Cells> rows;
  for (int i = 0; i < kFates; ++i) {
    const auto fate = static_cast<Fate>(i);
    rows.push_back({std::string(name_of(fate)), decimals(100 * proof.of(fate), 3)});
  }
  pages.table(
      {{"what becomes of the light of the focus between the limits of the section", 0.8}, {"%", 0.2, true}},
      rows);
}

void write_zones(DocumentPages& pages, const Proof& proof) {
  std::vector<Cells> rows;
  for (const ZoneProof& zone : proof.zones)
    rows.push_back({zone.mark, std::string(name_of(zone.kind)), decimals(zone.from_deg, 3),
                    decimals(zone.to_deg, 3), decimals(zone.worst_departure_deg, 4),
                    zone.least_margin_deg ? decimals(*zone.least_margin_deg, 2) : "",
                    decimals(100 * zone.share, 3), decimals(100 * zone.share_level, 3),
                    decimals(100 * zone.through, 1)});
  pages.section("Zone by zone", 30);
  pages.table({{"zone", 0.08},
               {"kind", 0.17},
               {"from deg", 0.1, true},
               {"to deg", 0.1, true},
               {"worst departure deg", 0.13, true},
               {"margin to total reflection deg", 0.14, true},
               {"% of light", 0.09, true},
               {"% leaves level", 0.1, true},
               {"% through faces", 0.09, true}},
              rows);
}

}  // namespace

std::string percent_words(double share, int digits) { return decimals(100 * share, digits) + " %"; }

void write_proof(DocumentPages& pages, const LensPlan& plan, const Proof& proof, const LengthWords& lengths) {
  const double allowed = plan.section.input.settings.level_within_deg;
  pages.paragraph(fmt::format(
      "{} rays from the focus were followed through the section as drawn, between {:.2f} and {:.2f} degrees of "
      "elevation, with the index {:.5f}. A ray counts as level when it leaves within {} degrees of the aim of "
      "its "
      "band. This proves the drawing; it says nothing of the finish and the setting of the finished prisms.",
      proof.elevations, proof.lowest_deg, proof.highest_deg, plan.section.input.index, shortest(allowed)));
  const std::string worst = proof.worst_zone.empty() ? "" : ", in zone " + proof.worst_zone;
  std::vector<DocumentPages::Fact> facts = {
      {"Worst departure from aim", decimals(proof.worst_departure_deg, 4) + " deg" + worst},
      {"Leaves level", percent_words(proof.of(Fate::level), 3)},
      {"Lost in the glass", percent_words(proof.lost(), 3)},
      {"Taken of the focus's light", percent_words(proof.share_of_source, 1)},
      {"Comes through the faces", percent_words(proof.through, 1)},
      {"Dark strips in the beam", dark_words(proof, lengths)}};
  if (proof.least_margin_deg)
    facts.push_back({"Least margin to total reflection", decimals(*proof.least_margin_deg, 2) + " deg"});
  pages.facts(facts);
  write_fates(pages, proof);
  write_zones(pages, proof);
  for (const std::string& note : plan.section.notes) pages.note(note);
}

}  // namespace prismwright
