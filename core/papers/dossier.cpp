#include "core/papers/dossier.h"

#include "core/papers/dossier_parts.h"

namespace prismwright {

long long DossierState::serial_of(const std::string& mark) const {
  const auto found = now.serial.find(mark);
  return found == now.serial.end() ? 0 : found->second;
}

long long DossierState::load_of_mark(const std::string& mark) const {
  const auto found = load_of.find(serial_of(mark));
  return found == load_of.end() ? 0 : found->second;
}

DossierState dossier_state(const DossierFacts& facts) {
  DossierState state;
  for (const PlannedPrism& prism : facts.plan.prisms) state.marks.push_back(prism.mark);
  state.now = stages_from(facts.ledger);
  state.counts = count_stages(state.now, state.marks);
  for (const LedgerEntry& line : facts.ledger)
    if (line.serial != 0 && line.load != 0) state.load_of[line.serial] = line.load;
  if (facts.bench != nullptr) {
    state.benched = benched(*facts.bench, facts.readings);
    state.bench = summary_of(state.benched);
  }
  return state;
}

Outcome<Drawing> dossier(const DossierFacts& facts, const HouseWords& words) {
  if (facts.plan.prisms.empty())
    return request_problem(
        "prisms", "panels",
        "The lens has 0 prisms, so there is nothing to hand over. Give it a panel that is not blind.");
  const DossierState state = dossier_state(facts);
  DocumentPages pages(document_paper(words));
  DossierDesk desk{facts, state, words, {words.inches}, pages};
  write_front(desk);
  write_proved(desk);
  write_light(desk);
  write_made_of(desk);
  write_care(desk);
  write_handling(desk);
  write_authority(desk);
  write_prisms(desk);
  return pages.finished("Owner's dossier", words);
}

}  // namespace prismwright
