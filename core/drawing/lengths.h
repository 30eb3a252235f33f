#pragma once

#include <string>

namespace prismwright {

/// How lengths are written on a sheet; inside they are mm always.
struct LengthWords {
  bool inches = false;

  /// For tables: to 0.001 mm, or 0.00001 in, always with all decimals.
  [[nodiscard]] std::string exact(double mm) const;
  /// For dimensions: to 0.01 mm or 0.001 in, without zeros at the end.
  [[nodiscard]] std::string plain(double mm) const;
  [[nodiscard]] const char* unit() const { return inches ? "in" : "mm"; }
};

/// Degrees to 0.001; no sign stands before a zero.
std::string degrees_words(double deg);
/// A number with so many decimals; never "-0.000".
std::string decimals(double value, int count);

/// A number with up to four decimals, without zeros at the end.
std::string shortest(double value);

}  // namespace prismwright
