#include "core/drawing/bought_list.h"

#include <algorithm>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "core/drawing/card_pages.h"
#include "core/drawing/lengths.h"

namespace prismwright {

namespace {

constexpr const char* kSubject = "Screws and dowels to be bought";

std::string item_words(const PartsLine& line, bool inches) {
  return fmt::format("{} {}", name_of(line.kind), inches ? line.size_inches : line.size);
}

std::string mass_words(const PartsLine& line, double pieces) {
  return line.mass_g ? decimals(*line.mass_g * pieces, 1) : "";
}

void add_marks(CardPages& pages, const std::vector<PartsLine>& bought, bool inches) {
  constexpr double kWithHeading_mm = 6;
  for (const PartsLine& line : bought) {
    pages.heading(fmt::format("{}: {} {}", item_words(line, inches), line.quantity,
                              line.quantity == 1 ? "piece" : "pieces"),
                  kWithHeading_mm);
    pages.lines({fmt::format("{}", fmt::join(line.marks, ", "))});
  }
}

}  // namespace

bool is_bought(const PartsLine& line) {
  return line.making == PartMaking::bought && (line.kind == PartKind::screw || line.kind == PartKind::dowel);
}

Drawing bought_list(const std::vector<PartsLine>& lines, const HouseWords& words) {
  std::vector<PartsLine> bought;
  std::ranges::copy_if(lines, std::back_inserter(bought), is_bought);
  if (bought.empty()) return titled({}, words);
  CardPages pages(words.paper.value_or(Paper::a4));
  std::vector<CardPages::Cells> rows;
  int pieces = 0;
  for (const PartsLine& line : bought) {
    rows.push_back({item_words(line, words.inches), name_of(line.metal), std::to_string(line.quantity),
                    mass_words(line, 1), mass_words(line, line.quantity)});
    pieces += line.quantity;
  }
  pages.heading(fmt::format("{} pieces to be bought, for one lens without spares", pieces),
                2 * CardPages::kRow_mm);
  pages.table({0.36, 0.22, 0.14, 0.14, 0.14}, {"what", "metal", "pieces", "g each", "g together"}, rows);
  pages.skip(2);
  pages.lines(
      {"Screws: nominal size, then length over all with the sunk head. Screw lengths are those that the "
       "joints ask for: buy the next longer stock length and cut it down, or check the joint with a "
       "shorter one. Their holes are drawn as wide as the screw; drill for the thread that you cut."});
  add_marks(pages, bought, words.inches);
  std::vector<UntitledSheet> sheets;
  for (SheetMaker& page : pages.take()) sheets.push_back({std::move(page), kSubject, "none", "as listed"});
  return titled(std::move(sheets), words);
}

}  // namespace prismwright
