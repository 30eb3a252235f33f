#pragma once

#include <concepts>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include "geometry/despatch/sha256.h"

namespace prismwright {

/// A key of everything that a piece of a pack comes from: the SHA-256 sum of a text in which every number
/// stands so that it reads back exactly and every word with its length, so that nothing can move from one entry
/// to the next. It begins with the name of what writes the piece and the number of its format, which is raised
/// when the writer comes to write other bytes from the same values.
class PieceKey {
 public:
  PieceKey(std::string_view writer, int format);

  void add(std::string_view words);
  void add(double number);
  void add(long long number);
  [[nodiscard]] std::string text() const { return sum_.hex(); }

 private:
  Sha256 sum_;
};

inline PieceKey& operator<<(PieceKey& key, std::string_view words) {
  key.add(words);
  return key;
}
inline PieceKey& operator<<(PieceKey& key, const std::string& words) { return key << std::string_view(words); }
inline PieceKey& operator<<(PieceKey& key, const char* words) { return key << std::string_view(words); }
inline PieceKey& operator<<(PieceKey& key, double number) {
  key.add(number);
  return key;
}
template <class Whole>
requires std::integral<Whole> || std::is_enum_v<Whole> PieceKey& operator<<(PieceKey& key, Whole number) {
  key.add(static_cast<long long>(number));
  return key;
}

}  // namespace prismwright
