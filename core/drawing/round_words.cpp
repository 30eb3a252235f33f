#include "core/drawing/round_words.h"

namespace prismwright {

std::string round_words(const ChainPiece& piece) {
  return piece.straight() ? "straight" : piece.turn > 0 ? "arc, full" : "arc, hollow";
}

void add_round(std::vector<std::string>& cells, const ChainPiece& piece, LengthWords lengths) {
  if (piece.straight()) return;
  for (const double value : {piece.radius_mm, piece.centre.r, piece.centre.z})
    cells.push_back(lengths.exact(value));
}

std::string departure_words(double mm, LengthWords lengths) {
  return lengths.inches ? lengths.exact(mm) : decimals(mm, 4);
}

}  // namespace prismwright
