#include <fmt/format.h>

#include "core/frame/cut_words.h"
#include "core/works/inspection.h"
#include "core/works/works_csv.h"
#include "geometry/despatch/lens_csv.h"
#include "geometry/despatch/lens_shop.h"
#include "geometry/despatch/piece_files.h"
#include "geometry/despatch/piece_key.h"
#include "geometry/despatch/ready_piece.h"

namespace prismwright {

namespace {

/// A table of the record; its key is that of its own text.
ReadyPiece table(const std::string& name, const std::string& words, std::string text) {
  DespatchPiece piece{DespatchGroup::record, name, words, sha256_of(text), false, {}};
  return {std::move(piece),
          [path = "record/" + name + ".csv", text = std::move(text)](
              const std::string& folder, const Progress&) { return one_file(folder, path, text); }};
}

std::string inspection_text(LensShop& shop) {
  const DespatchSource& source = shop.source();
  const BenchPlan* bench = source.readings.empty() ? nullptr : shop.bench();
  return inspection_csv(inspect(
      shop.plan(), {source.log.measurements, source.log.decisions, source.ledger, source.readings, bench}));
}

std::string photograph_path(const Photograph& photograph) {
  const std::string stem = safe_stem(fmt::format("{:04}-{}", photograph.number, photograph.mark));
  return fmt::format("record/photographs/{}{}", stem, photograph.media == "image/png" ? ".png" : ".jpg");
}

/// Photographs are never changed once they stand in the book.
ReadyPiece photograph_piece(LensShop& shop, const Photograph& photograph) {
  PieceKey key("photograph", 1);
  key << photograph.number << photograph.when_utc << photograph.mark << photograph.name << photograph.media;
  DespatchPiece piece{DespatchGroup::record,
                      fmt::format("photograph-{}", photograph.number),
                      fmt::format("Photograph {} of {}", photograph.number, photograph.mark),
                      key.text(),
                      false,
                      {}};
  return {std::move(piece), [&shop, number = photograph.number, path = photograph_path(photograph)](
                                const std::string& folder, const Progress&) {
            return one_file(folder, path, shop.source().photograph(number));
          }};
}

template <class Entries, class Text>
void add_table(std::vector<ReadyPiece>& pieces, const char* name, const char* words, const Entries& entries,
               const Text& text) {
  if (!entries.empty()) pieces.push_back(table(name, words, text(entries)));
}

}  // namespace

ReadyPieces record_pieces(LensShop& shop) {
  const DespatchSource& source = shop.source();
  const WorksLog& log = source.log;
  std::vector<ReadyPiece> pieces;
  pieces.push_back(table("ledger", "Works ledger", ledger_csv(source.ledger)));
  pieces.push_back(table("inspection", "What to measure, and what was", inspection_text(shop)));
  add_table(pieces, "loads", "Loads of the vessel", log.loads, vessel_loads_csv);
  add_table(pieces, "measurements", "Measurements", log.measurements, measurements_csv);
  add_table(pieces, "decisions", "Decisions", log.decisions, decisions_csv);
  add_table(pieces, "shrinkage", "Readings of shrinkage", log.shrink, shrink_readings_csv);
  add_table(pieces, "spendings", "Hours and money spent", log.spendings, spendings_csv);
  add_table(pieces, "bench-readings", "Readings of the laser bench", source.readings, bench_readings_csv);
  add_table(pieces, "photographs", "List of photographs", log.photographs, photographs_csv);
  if (!source.photograph) return pieces;
  for (const Photograph& photograph : log.photographs) pieces.push_back(photograph_piece(shop, photograph));
  return pieces;
}

}  // namespace prismwright
