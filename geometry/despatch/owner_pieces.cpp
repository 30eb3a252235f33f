#include <algorithm>

#include <fmt/format.h>

#include "core/papers/dossier.h"
#include "core/papers/estimate.h"
#include "core/works/works_csv.h"
#include "geometry/clearance_order.h"
#include "geometry/despatch/despatch_keys.h"
#include "geometry/despatch/lens_csv.h"
#include "geometry/despatch/light_key.h"
#include "geometry/despatch/paper_piece.h"

namespace prismwright {

namespace {

// Raised where the picture or the light come to be shown otherwise; all else stands in the keys as drawn.
constexpr int kDossierFormat = 1;
constexpr double kGramsPerKilogram = 1000;

/// All but what takes long: solids, light, bench and picture.
Outcome<DossierFacts> quick_facts(LensShop& shop, const Progress& progress) {
  const auto clearances = shop.clearances(progress);
  if (!clearances) return clearances.problem();
  const DespatchSource& source = shop.source();
  DossierFacts facts{shop.plan(),   shop.masters(), &shop.proof(),  nullptr,
                     source.ledger, &source.log,    source.readings};
  facts.brass_kg = shop.brass_kg();
  facts.clearances_known = true;
  for (const Clearance& pair : **clearances) {
    if (pair.verdict == Verdict::tight) ++facts.tight;
    if (rests_by_design(pair) || (facts.tightest_mm && *facts.tightest_mm <= pair.gap_mm)) continue;
    facts.tightest_mm = pair.gap_mm;
    facts.tightest_between = pair.first + " and " + pair.second;
  }
  facts.clashes = static_cast<int>(shop.clashes().count());
  return facts;
}

Outcome<Drawing> draw_dossier(LensShop& shop, const Progress& progress) {
  auto facts = quick_facts(shop, progress);
  if (!facts) return facts.problem();
  const auto glass = shop.bodies(progress);
  if (!glass) return glass.problem();
  for (const PrismBody& body : (*glass)->prisms) facts->glass_kg += body.mass_g / kGramsPerKilogram;
  facts->bench = shop.bench();
  const auto light = shop.light(progress);
  if (light) facts->light = *light;
  // A lens without a light report has a dossier that says so; a stop ends it.
  if (!light && light.problem().trouble != Trouble::request) return light.problem();
  const auto picture = shop.picture(kThreeQuarters, progress);
  if (!picture) return picture.problem();
  facts->picture = *picture;
  return dossier(*facts, shop.words());
}

Outcome<Drawing> undated_dossier(LensShop& shop) {
  auto facts = quick_facts(shop, {});
  if (!facts) return facts.problem();
  // As the closed integrals have it: solids need not be made for a key.
  facts->glass_kg = shop.drawn_glass_kg();
  return dossier(*facts, shop.undated_words());
}

/// A day that stands for any, so that an offer stays what it is until a figure of it changes.
constexpr std::chrono::sys_days kAnyDay = std::chrono::year{2024} / 1 / 1;

Outcome<Drawing> draw_estimate(LensShop& shop, const HouseWords& words, std::chrono::sys_days day) {
  return estimate(shop.plan(), shop.reckoning(day), shop.choice().estimate, words);
}

/// Everything that was read and measured, word by word: the dossier judges it by the bench, which takes long.
void add_readings(PieceKey& key, const DespatchSource& source) {
  key << bench_readings_csv(source.readings) << measurements_csv(source.log.measurements)
      << decisions_csv(source.log.decisions);
}

}  // namespace

ReadyPieces dossier_pieces(LensShop& shop) {
  PieceKey key = light_key(shop, "dossier");
  key << kDossierFormat;
  add_readings(key, shop.source());
  return std::vector<ReadyPiece>{paper_piece(
      {DespatchGroup::dossier, "owners-dossier", "Owner's dossier", "owners-dossier", false}, std::move(key),
      undated_dossier(shop), [&shop](const Progress& progress) { return draw_dossier(shop, progress); })};
}

ReadyPieces estimate_pieces(LensShop& shop) {
  return std::vector<ReadyPiece>{
      paper_piece({DespatchGroup::estimate, "estimate", "Estimate", "estimate", false}, PieceKey("estimate", 1),
                  draw_estimate(shop, shop.undated_words(), kAnyDay),
                  [&shop](const Progress&) { return draw_estimate(shop, shop.words(), shop.day()); })};
}

}  // namespace prismwright
