#include "geometry/despatch/piece_key.h"

#include <fmt/format.h>

namespace prismwright {

PieceKey::PieceKey(std::string_view writer, int format) {
  add(writer);
  add(static_cast<long long>(format));
}

void PieceKey::add(std::string_view words) {
  sum_.add(fmt::format("{}:", words.size()));
  sum_.add(words);
  sum_.add("\n");
}

void PieceKey::add(double number) { sum_.add(fmt::format("{}\n", number)); }

void PieceKey::add(long long number) { sum_.add(fmt::format("{}\n", number)); }

}  // namespace prismwright
