#include <fmt/format.h>

#include "core/drawing/arrangement_sheet.h"
#include "core/drawing/chart_sheet.h"
#include "core/drawing/prism_sheet.h"
#include "core/drawing/section_sheet.h"
#include "core/lens/trimmed_volume.h"
#include "core/lens/whole_rings.h"
#include "geometry/despatch/despatch_keys.h"
#include "geometry/despatch/frame_papers.h"
#include "geometry/despatch/lens_shop.h"
#include "geometry/despatch/paper_piece.h"
#include "geometry/despatch/prism_views.h"

namespace prismwright {

namespace {

// Raised where the views that only solids give come to be drawn otherwise; all else stands in the keys as
// drawn.
constexpr int kArrangementFormat = 2;
constexpr int kPrismSheetFormat = 2;
constexpr double kGramsPerCm3_per_mm3 = 1e-3;

PaperWords drawing_words(const std::string& name, const std::string& words) {
  return {DespatchGroup::drawings, name, words, "drawings/" + name, true};
}

ReadyPiece arrangement(LensShop& shop) {
  PieceKey key("arrangement", kArrangementFormat);
  key << shop.glass_sum();
  key << shop.metal_sum();
  const auto paper = [&shop](const Progress& progress) -> Outcome<Drawing> {
    const auto studio = shop.studio(progress);
    if (!studio) return studio.problem();
    auto elevation = (*studio)->lines({0, 0}, progress);
    if (!elevation) return elevation.problem();
    auto from_above = (*studio)->lines({0, 90}, progress);
    if (!from_above) return from_above.problem();
    return arrangement_sheet(shop.plan(), shop.frame(), {std::move(*elevation), std::move(*from_above)},
                             shop.words());
  };
  return paper_piece(drawing_words("general-arrangement", "General arrangement"), std::move(key),
                     arrangement_sheet(shop.plan(), shop.frame(), {}, shop.undated_words()), paper);
}

Outcome<Drawing> draw_section(LensShop& shop, const HouseWords& words) {
  SectionSheetSettings settings;
  settings.title = words.title;
  settings.order = words.order;
  settings.material = shop.values().material.name;
  settings.date = words.date;
  settings.revision = words.revision;
  settings.paper = words.paper;
  settings.inches = words.inches;
  settings.whole_rings = whole_rings(shop.plan());
  return section_sheet(shop.plan().section, settings);
}

ReadyPiece section(LensShop& shop) {
  return paper_piece(drawing_words("section", "Section with zone table"), PieceKey("section", 1),
                     draw_section(shop, shop.undated_words()),
                     [&shop](const Progress&) { return draw_section(shop, shop.words()); });
}

/// As the closed integral has them, for the key: the solid itself follows from the prism.
PrismSolidFacts drawn_facts(const LensPlan& plan, const Master& kind) {
  PrismSolidFacts facts;
  facts.volume_mm3 = trimmed_volume_mm3(plan.prisms[kind.prism]);
  facts.mass_g = facts.volume_mm3 * plan.values.material.density_g_cm3 * kGramsPerCm3_per_mm3;
  return facts;
}

ReadyPiece prism_kind(LensShop& shop, const Master& kind) {
  PieceKey key("prism sheet", kPrismSheetFormat);
  add_solid(key, shop.plan().prisms[kind.prism]);
  const auto paper = [&shop, &kind](const Progress& progress) -> Outcome<Drawing> {
    const auto glass = shop.bodies(progress);
    if (!glass) return glass.problem();
    const auto facts = solid_facts(shop.plan().prisms[kind.prism], (*glass)->prisms[kind.prism], progress);
    if (!facts) return facts.problem();
    return prism_sheet(shop.plan(), kind, *facts, shop.words());
  };
  const std::string used =
      kind.uses.size() == 1 ? kind.uses.front().mark : fmt::format("{} prisms", kind.uses.size());
  ReadyPiece piece = paper_piece(
      drawing_words("prism-" + kind.name, fmt::format("Prism {}, {}", kind.name, used)), std::move(key),
      prism_sheet(shop.plan(), kind, drawn_facts(shop.plan(), kind), shop.undated_words()), paper);
  std::vector<std::string> marks;
  for (const MasterUse& use : kind.uses) marks.push_back(use.mark);
  if (piece.piece.withheld.empty()) piece.piece.withheld = shop.clashes().why(marks);
  return piece;
}

ReadyPiece chart(LensShop& shop) {
  return paper_piece(drawing_words("panel-chart", "Panel chart"), PieceKey("panel chart", 1),
                     chart_sheets(shop.plan(), shop.stages(), shop.undated_words()), [&shop](const Progress&) {
                       return chart_sheets(shop.plan(), shop.stages(), shop.words());
                     });
}

}  // namespace

ReadyPieces drawing_pieces(LensShop& shop) {
  std::vector<ReadyPiece> pieces;
  pieces.push_back(arrangement(shop));
  pieces.push_back(section(shop));
  pieces.push_back(chart(shop));
  for (const Master& kind : shop.masters()) pieces.push_back(prism_kind(shop, kind));
  for (ReadyPiece& paper : frame_papers(shop)) pieces.push_back(std::move(paper));
  return pieces;
}

}  // namespace prismwright
