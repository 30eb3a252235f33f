#include "geometry/despatch/frame_papers.h"

#include <set>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "core/drawing/bought_list.h"
#include "core/drawing/frame_drawings.h"
#include "geometry/despatch/despatch_keys.h"
#include "geometry/despatch/lens_shop.h"
#include "geometry/despatch/paper_piece.h"
#include "geometry/fit_words.h"

namespace prismwright {

namespace {

// Raised where what takes long to work out comes to be drawn otherwise; all else stands in the keys as drawn.
constexpr int kNestFormat = 2;
constexpr int kAssemblyFormat = 3;

/// The lines of the parts list, with what the solids weigh or what closed forms give.
Outcome<Drawing> draw_part(LensShop& shop, const std::string& first_mark, const KnownVolumes& volumes,
                           const HouseWords& words) {
  for (const PartsLine& line : parts_list(shop.frame(), volumes)) {
    if (line.marks.front() != first_mark) continue;
    if (auto one = drawing_of(shop.frame(), line, words, shop.landings())) return std::move(one->drawing);
  }
  return request_problem("part", first_mark, fmt::format("The frame has no part {} to be drawn.", first_mark));
}

ReadyPiece part_paper(LensShop& shop, const PartsLine& line, const NamedDrawing& drawn) {
  const auto paper = [&shop, mark = line.marks.front()](const Progress& progress) -> Outcome<Drawing> {
    const auto volumes = shop.volumes(progress);
    if (!volumes) return volumes.problem();
    return draw_part(shop, mark, *volumes, shop.words());
  };
  const std::string name = "frame-" + drawn.name;
  ReadyPiece piece =
      paper_piece({DespatchGroup::drawings, name, "Frame: " + drawn.words, "drawings/" + name, true},
                  PieceKey("frame part", 1), drawn.drawing, paper);
  piece.piece.withheld = shop.clashes().why(line.marks);
  return piece;
}

ReadyPiece bought_paper(LensShop& shop, const std::vector<PartsLine>& lines) {
  const auto paper = [&shop](const Progress& progress) -> Outcome<Drawing> {
    const auto volumes = shop.volumes(progress);
    if (!volumes) return volumes.problem();
    return bought_list(parts_list(shop.frame(), *volumes), shop.words());
  };
  return paper_piece({DespatchGroup::drawings, "frame-bought-parts", "Frame: screws and dowels to be bought",
                      "drawings/frame-bought-parts", true},
                     PieceKey("frame part", 1), bought_list(lines, shop.undated_words()), paper);
}

std::vector<ReadyPiece> part_papers(LensShop& shop) {
  std::vector<ReadyPiece> pieces;
  const std::vector<PartsLine> lines = parts_list(shop.frame(), shop.drawn_volumes());
  for (const PartsLine& line : lines) {
    if (const auto drawn = drawing_of(shop.frame(), line, shop.undated_words(), shop.landings()))
      pieces.push_back(part_paper(shop, line, *drawn));
  }
  if (!bought_list(lines, shop.undated_words()).sheets.empty()) pieces.push_back(bought_paper(shop, lines));
  return pieces;
}

ReadyPiece nest_paper(LensShop& shop) {
  PieceKey key("nest sheets", kNestFormat);
  add_sheets(key, shop.values().frame);
  const HouseWords words = shop.undated_words();
  key << words.title << words.client << words.order << words.focal_mm << words.material << words.inches
      << words.paper.has_value() << words.paper.value_or(Paper::a4);
  for (const FlatPart& part : shop.frame().flats) {
    key << part.mark << part.kind;
    add_solid(key, part);
  }
  const auto paper = [&shop](const Progress& progress) -> Outcome<Drawing> {
    const auto nest = shop.nest(progress);
    if (!nest) return nest.problem();
    return nest_drawing(**nest, shop.frame(), shop.words());
  };
  ReadyPiece piece =
      paper_piece({DespatchGroup::drawings, "frame-sheets", "Sheets to be cut", "drawings/frame-sheets", true},
                  std::move(key), Drawing{}, paper);
  std::vector<std::string> marks;
  for (const FlatPart& part : shop.frame().flats) marks.push_back(part.mark);
  piece.piece.withheld = shop.clashes().why(marks);
  return piece;
}

std::string way_words(const OpenSeat& seat) {
  if (seat.from_sea && seat.from_lamp) return seat.mark + " from the sea or lamp side";
  return seat.mark + (seat.from_sea ? " from the sea side" : " from the lamp side");
}

PanelAssembly assembly_of(PanelFit fit, LengthWords lengths) {
  put_in_words(fit, lengths);
  PanelAssembly assembly{{fit.panel}, fit.first_rib, fit.second_rib, {}, {}, {}};
  for (const FitStep& step : fit.steps) assembly.steps.push_back(step.words);
  for (const FitBlocked& blocked : fit.cannot) assembly.cannot.push_back(blocked.words);
  for (const OpenSeat& seat : fit.open_seats) assembly.open_seats.push_back(way_words(seat));
  return assembly;
}

/// Prisms of the panel whose ends no pocket takes: their neighbours and the compound hold them.
std::vector<std::string> held_by_compound(const LensPlan& plan, const FramePlan& frame, int panel) {
  std::set<std::string> held;
  for (const RibPlan& rib : frame.ribs)
    for (const Pocket& pocket : rib.pockets) held.insert(pocket.marks.begin(), pocket.marks.end());
  std::vector<std::string> marks;
  for (const PlannedPrism& prism : plan.prisms)
    if (prism.panel == panel && !held.contains(prism.mark)) marks.push_back(prism.mark);
  return marks;
}

/// Everything said of a panel, with its own number left out.
std::string said_of(const PanelAssembly& assembly) {
  std::string said = fmt::format("{}\n{}\n", assembly.first_rib, assembly.second_rib);
  for (const auto* lines : {&assembly.steps, &assembly.cannot, &assembly.open_seats})
    for (const std::string& line : *lines) said += line + "\n";
  const std::string own = fmt::format("P{:02}-", assembly.panels.front());
  for (std::size_t at = said.find(own); at != std::string::npos; at = said.find(own, at))
    said.replace(at, own.size(), "P-");
  return said;
}

std::vector<PanelAssembly> assemblies_of(LensShop& shop, const std::vector<PanelFit>& fits) {
  std::vector<PanelAssembly> assemblies;
  std::vector<std::string> said;
  for (const PanelFit& fit : fits) {
    PanelAssembly own = assembly_of(fit, {shop.words().inches});
    const auto loose = held_by_compound(shop.plan(), shop.frame(), fit.panel);
    if (!loose.empty())
      own.steps.push_back(
          fmt::format("No pocket takes {}: glazing compound in the joints to their neighbours holds them "
                      "(common practice). "
                      "Support them until it has set.",
                      fmt::join(loose, ", ")));
    const std::string words = said_of(own);
    const auto known = std::ranges::find(said, words);
    if (known != said.end()) {
      assemblies[static_cast<std::size_t>(known - said.begin())].panels.push_back(fit.panel);
    } else {
      assemblies.push_back(std::move(own));
      said.push_back(words);
    }
  }
  return assemblies;
}

ReadyPiece assembly_paper(LensShop& shop) {
  PieceKey key("assembly", kAssemblyFormat);
  key << shop.glass_sum();
  key << shop.metal_sum();
  add_values(key, shop.values(), {"section.gap_mm", "frame"});
  const auto paper = [&shop](const Progress& progress) -> Outcome<Drawing> {
    const auto fits = shop.fits(progress);
    if (!fits) return fits.problem();
    return assembly_sheets(shop.frame(), assemblies_of(shop, **fits), shop.words());
  };
  return paper_piece({DespatchGroup::drawings, "assembly", "Order of assembly", "drawings/assembly", true},
                     std::move(key), assembly_sheets(shop.frame(), {}, shop.undated_words()), paper);
}

}  // namespace

std::vector<ReadyPiece> frame_papers(LensShop& shop) {
  if (shop.frame().flats.empty()) return {};
  std::vector<ReadyPiece> pieces = part_papers(shop);
  pieces.push_back(nest_paper(shop));
  pieces.push_back(assembly_paper(shop));
  return pieces;
}

}  // namespace prismwright
