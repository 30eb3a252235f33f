#include "core/frame/cut_shapes.h"
#include "core/frame/cut_words.h"
#include "geometry/despatch/despatch_keys.h"
#include "geometry/despatch/lens_shop.h"
#include "geometry/despatch/piece_files.h"
#include "geometry/despatch/ready_piece.h"
#include "geometry/frame_exports.h"
#include "geometry/plate_dxf.h"

namespace prismwright {

namespace {

/// Raised when nest_flats or nest_dxf come to give other bytes.
constexpr int kNestFormat = 1;

/// One shape of plate. Its file is so soon made that its key is that of the file's own bytes.
ReadyPiece plate_piece(LensShop& shop, const AlikePlates& alike) {
  const FlatPart& first = shop.frame().flats[alike.front()];
  const std::vector<std::string> marks = marks_of(shop.frame().flats, alike);
  const std::string name = cut_file_stem(first, alike.size());
  std::string dxf = plate_dxf(first, marks);
  DespatchPiece piece{DespatchGroup::cutting, name,  "Plate: " + short_marks(marks),
                      sha256_of(dxf),         false, shop.clashes().why(marks)};
  return {std::move(piece),
          [path = "cutting/" + name + ".dxf", dxf = std::move(dxf)](
              const std::string& folder, const Progress&) { return one_file(folder, path, dxf); }};
}

Outcome<std::vector<std::string>> write_nests(LensShop& shop, const std::string& folder,
                                              const Progress& progress) {
  const auto nest = shop.nest(progress);
  if (!nest) return nest.problem();
  PieceFiles files(folder);
  const auto& sheets = (*nest)->sheets;
  for (std::size_t i = 0; i < sheets.size() && files.well(); ++i) {
    const std::string words = nest_words(shop.values().brief.title, **nest, i);
    files.put("cutting/" + nest_file_name(**nest, i),
              std::string_view(nest_dxf(sheets[i], shop.frame().flats, words)));
  }
  for (const std::string& sentence : (*nest)->too_large) shop.notes.push_back(sentence);
  return files.paths();
}

/// All sheets together: one plate that changes may move the others.
ReadyPiece nests_piece(LensShop& shop, const std::vector<std::string>& marks) {
  PieceKey key("nests", kNestFormat);
  key << shop.values().brief.title;
  add_sheets(key, shop.values().frame);
  for (const FlatPart& part : shop.frame().flats) {
    if (part.making != PartMaking::cut_flat) continue;
    key << part.mark;
    add_solid(key, part);
  }
  DespatchPiece piece{DespatchGroup::cutting,   "sheets", "Sheets to be cut", key.text(), false,
                      shop.clashes().why(marks)};
  return {std::move(piece), [&shop](const std::string& folder, const Progress& progress) {
            return write_nests(shop, folder, progress);
          }};
}

}  // namespace

ReadyPieces cutting_pieces(LensShop& shop) {
  std::vector<ReadyPiece> pieces;
  std::vector<std::string> all;
  for (const AlikePlates& alike : alike_plates(shop.frame().flats)) {
    const FlatPart& first = shop.frame().flats[alike.front()];
    if (first.making != PartMaking::cut_flat || first.outline.empty()) continue;
    pieces.push_back(plate_piece(shop, alike));
    for (const std::string& mark : marks_of(shop.frame().flats, alike)) all.push_back(mark);
  }
  if (!pieces.empty()) pieces.push_back(nests_piece(shop, all));
  return pieces;
}

}  // namespace prismwright
