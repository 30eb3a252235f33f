#pragma once

#include <bit>
#include <cstdint>
#include <cstring>
#include <string_view>

namespace prismwright {

/// A 64-bit sum over words and bytes, eight bytes at a time. No guard against forgery.
///
/// Every step can be turned back (exclusive or, an odd factor, a shift folded onto itself), so two inputs that
/// differ in one word alone never have the same sum. The factor is the golden section of 2^64 made odd.
class WordHash {
 public:
  void add(std::uint64_t word) {
    value_ = (value_ ^ word) * 0x9E3779B97F4A7C15ULL;
    value_ ^= value_ >> 32;
  }
  /// Bytes short of a whole word are filled up with zeros; add their number first where it may differ.
  void add(std::string_view bytes) {
    while (bytes.size() >= sizeof(std::uint64_t)) {
      add(word_of_bytes(bytes.substr(0, sizeof(std::uint64_t))));
      bytes.remove_prefix(sizeof(std::uint64_t));
    }
    if (!bytes.empty()) add(word_of_bytes(bytes));
  }
  [[nodiscard]] std::uint64_t value() const { return value_; }

 private:
  /// The first byte lowest on every machine, so that a book may move between them.
  static std::uint64_t word_of_bytes(std::string_view bytes) {
    std::uint64_t word = 0;
    std::memcpy(&word, bytes.data(), bytes.size());
    if constexpr (std::endian::native == std::endian::big) word = __builtin_bswap64(word);
    return word;
  }

  std::uint64_t value_ = 0x243F6A8885A308D3ULL;  // the fraction of pi in binary: any number but nought would do
};

}  // namespace prismwright
