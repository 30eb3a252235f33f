#include <algorithm>
#include <map>

#include <fmt/format.h>

#include "geometry/despatch/despatch_keys.h"
#include "geometry/despatch/lens_shop.h"
#include "geometry/despatch/piece_files.h"
#include "geometry/despatch/ready_piece.h"
#include "geometry/despatch/step_key.h"
#include "geometry/step_writer.h"

namespace prismwright {

namespace {

/// Congruent prisms share the solid of the first of them in the plan.
class FirstOfShape {
 public:
  explicit FirstOfShape(const LensPlan& plan) {
    for (const PlannedPrism& prism : plan.prisms) first_.try_emplace(prism.shape_key, &prism);
  }
  [[nodiscard]] const PlannedPrism& of(const PlannedPrism& prism) const { return *first_.at(prism.shape_key); }

 private:
  std::map<std::string, const PlannedPrism*> first_;
};

void add_prism(PieceKey& key, const PlannedPrism& prism, const FirstOfShape& firsts) {
  key << prism.mark << prism.axis_deg;
  add_solid(key, firsts.of(prism));
}

std::string panel_name(int number) { return fmt::format("P{:02}", number); }

/// The parts of one panel, or of the whole lens (0).
Outcome<std::vector<StepPart>> parts_of(LensShop& shop, int panel, const Progress& progress) {
  const auto glass = shop.bodies(progress);
  if (!glass) return glass.problem();
  const auto brass = shop.metal(progress);
  if (!brass) return brass.problem();
  std::vector<StepPart> parts;
  const auto& prisms = shop.plan().prisms;
  for (std::size_t i = 0; i < prisms.size(); ++i) {
    const PrismBody& body = (*glass)->prisms[i];
    if (panel == 0 || prisms[i].panel == panel) parts.push_back({body.mark, body.shape, PartStuff::glass});
  }
  for (const FrameBody& body : **brass)
    if (panel == 0 || body.panel == panel) parts.push_back({body.mark, body.shape, PartStuff::metal});
  return parts;
}

auto assembly_writer(LensShop& shop, const std::string& name, int panel, const std::string& path) {
  return [&shop, name, panel, path](const std::string& folder,
                                    const Progress& progress) -> Outcome<std::vector<std::string>> {
    const auto parts = parts_of(shop, panel, progress);
    if (!parts) return parts.problem();
    return one_file(folder, path, step_text(name, *parts));
  };
}

std::vector<std::string> marks_of_panel(LensShop& shop, int panel) {
  std::vector<std::string> marks;
  const auto take = [&](const auto& parts) {
    for (const auto& part : parts)
      if (part.panel == panel) marks.push_back(part.mark);
  };
  take(shop.plan().prisms);
  take(shop.frame().ribs);
  take(shop.frame().flats);
  take(shop.frame().bars);
  take(shop.frame().rounds);
  return marks;
}

}  // namespace

ReadyPieces prism_pieces(LensShop& shop) {
  const FirstOfShape firsts(shop.plan());
  std::vector<ReadyPiece> pieces;
  for (const PlannedPrism& prism : shop.plan().prisms) {
    PieceKey key = step_key("prism");
    add_prism(key, prism, firsts);
    DespatchPiece piece{DespatchGroup::prisms, prism.mark, "Prism " + prism.mark, key.text(), false, {}};
    piece.withheld = shop.clashes().why({&prism.mark, 1});
    const auto write = [&shop, mark = prism.mark](
                           const std::string& folder,
                           const Progress& progress) -> Outcome<std::vector<std::string>> {
      const auto glass = shop.bodies(progress);
      if (!glass) return glass.problem();
      return one_file(folder, "prisms/" + mark + ".step",
                      step_text({mark, (*glass)->find(mark)->shape, PartStuff::glass}));
    };
    pieces.push_back({std::move(piece), write});
  }
  return pieces;
}

ReadyPieces panel_pieces(LensShop& shop) {
  const FirstOfShape firsts(shop.plan());
  std::vector<ReadyPiece> pieces;
  for (const PanelPlace& panel : shop.plan().panels) {
    const std::vector<std::string> marks = marks_of_panel(shop, panel.number);
    if (marks.empty()) continue;
    const std::string name = panel_name(panel.number);
    PieceKey key = step_key("panel");
    key << name;
    for (const PlannedPrism& prism : shop.plan().prisms)
      if (prism.panel == panel.number) add_prism(key, prism, firsts);
    add_metal(key, shop.frame(), panel.number);
    DespatchPiece piece{
        DespatchGroup::panels,    name, fmt::format("Panel {}", panel.number), key.text(), false,
        shop.clashes().why(marks)};
    pieces.push_back({std::move(piece), assembly_writer(shop, name, panel.number, "panels/" + name + ".step")});
  }
  return pieces;
}

ReadyPieces lens_pieces(LensShop& shop) {
  const FirstOfShape firsts(shop.plan());
  PieceKey key = step_key("lens");
  for (const PlannedPrism& prism : shop.plan().prisms) add_prism(key, prism, firsts);
  key << shop.metal_sum();
  DespatchPiece piece{DespatchGroup::lens, "lens", "The whole lens, glass and brass",
                      key.text(),          false,  shop.clashes().why_any()};
  return std::vector<ReadyPiece>{{std::move(piece), assembly_writer(shop, "lens", 0, "lens.step")}};
}

}  // namespace prismwright
