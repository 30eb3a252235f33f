#include <fmt/format.h>

#include "core/base/csv_cell.h"
#include "core/frame/frame_csv.h"
#include "core/works/make_list.h"
#include "geometry/clearance_csv.h"
#include "geometry/despatch/despatch_keys.h"
#include "geometry/despatch/lens_csv.h"
#include "geometry/despatch/lens_shop.h"
#include "geometry/despatch/piece_files.h"
#include "geometry/despatch/ready_piece.h"
#include "geometry/frame_exports.h"

namespace prismwright {

namespace {

// Raised where a list comes to hold other columns.
constexpr int kPrismsFormat = 1;
constexpr int kPartsFormat = 1;
constexpr int kSheetsFormat = 1;

using Text = std::function<Outcome<std::string>(const Progress&)>;

ReadyPiece list_piece(const std::string& name, const std::string& words, const std::string& key, Text text) {
  DespatchPiece piece{DespatchGroup::lists, name, words, key, false, {}};
  return {std::move(piece), [path = "lists/" + name + ".csv", text = std::move(text)](
                                const std::string& folder, const Progress& progress) {
            return one_file(folder, path, text(progress));
          }};
}

/// A list that is so soon made that its key is that of its own text.
ReadyPiece quick_list(const std::string& name, const std::string& words, std::string text) {
  const std::string key = sha256_of(text);
  return list_piece(name, words, key, [text = std::move(text)](const Progress&) { return text; });
}

ReadyPiece prisms_list(LensShop& shop) {
  PieceKey key("prisms list", kPrismsFormat);
  key << shop.glass_sum();
  key << shop.values().material.density_g_cm3;
  for (const PlannedPrism& prism : shop.plan().prisms) {
    const Master* master = master_of_mark(shop.masters(), prism.mark);
    key << prism.zone << prism.kind << (master ? master->name : "") << shop.stages().stage_of(prism.mark)
        << casting_of(shop.stages(), prism.mark);
  }
  return list_piece("prisms", "Prisms", key.text(), [&shop](const Progress& progress) -> Outcome<std::string> {
    const auto glass = shop.bodies(progress);
    if (!glass) return glass.problem();
    return prisms_csv(shop.plan(), **glass, shop.masters(), shop.stages());
  });
}

ReadyPiece parts_list_piece(LensShop& shop) {
  PieceKey key("parts list", kPartsFormat);
  key << shop.metal_sum();
  add_sheets(key, shop.values().frame);
  return list_piece("parts", "Parts of the frame", key.text(),
                    [&shop](const Progress& progress) -> Outcome<std::string> {
                      const auto brass = shop.metal(progress);
                      if (!brass) return brass.problem();
                      const auto nest = shop.nest(progress);
                      if (!nest) return nest.problem();
                      return parts_csv(listed_parts(shop.frame(), **brass), **nest);
                    });
}

ReadyPiece sheets_list(LensShop& shop) {
  PieceKey key("sheets list", kSheetsFormat);
  add_sheets(key, shop.values().frame);
  for (const FlatPart& part : shop.frame().flats) {
    key << part.mark;
    add_solid(key, part);
  }
  return list_piece("sheets", "Sheets to be cut", key.text(),
                    [&shop](const Progress& progress) -> Outcome<std::string> {
                      const auto nest = shop.nest(progress);
                      if (!nest) return nest.problem();
                      std::vector<std::string> names;
                      for (std::size_t i = 0; i < (*nest)->sheets.size(); ++i)
                        names.push_back(nest_file_name(**nest, i));
                      return sheets_csv(**nest, names);
                    });
}

}  // namespace

ReadyPieces list_pieces(LensShop& shop) {
  const auto clearances = shop.clearances();
  if (!clearances) return clearances.problem();
  std::vector<ReadyPiece> pieces;
  pieces.push_back(quick_list("zones", "Zones of the section", zones_csv(shop.plan().section)));
  pieces.push_back(prisms_list(shop));
  if (!shop.frame().flats.empty()) {
    pieces.push_back(parts_list_piece(shop));
    pieces.push_back(sheets_list(shop));
  }
  const MakeList list = make_list(shop.plan(), shop.masters(), shop.kinds().sizes, shop.source().ledger);
  pieces.push_back(quick_list("make-list", "Make list", make_list_csv(list)));
  pieces.push_back(quick_list("clearances", "Clearances", clearances_csv(**clearances)));
  return pieces;
}

}  // namespace prismwright
