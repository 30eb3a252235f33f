#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/outcome.h"
#include "core/drawing/drawing.h"
#include "core/drawing/text_box.h"

namespace prismwright {

/// A QR code (ISO/IEC 18004) as a square of dark and light modules, without its quiet zone.
struct QrCode {
  static constexpr int kQuiet = 4;  ///< light modules that the standard asks for on every side

  int side = 0;            ///< modules
  std::vector<bool> dark;  ///< row by row from the top

  [[nodiscard]] bool at(int row, int column) const {
    return dark[static_cast<std::size_t>(row * side + column)];
  }
  /// Side of one module on a square ground that holds the quiet zone too, mm.
  [[nodiscard]] double module_mm(double ground_mm) const { return ground_mm / (side + 2 * kQuiet); }
};

/// The smallest code that holds the text (UTF-8) and can still be read with 15 % of it spoilt (level M).
/// Refused: no text, and more than a code takes (2331 bytes at most).
Outcome<QrCode> qr_code(std::string_view text);

/// The dark modules as filled strokes on a square ground whose rim is the quiet zone. `ground` is square.
std::vector<Stroke> qr_strokes(const QrCode& code, const PaperBox& ground);

/// What a prism's code says: "PRISMWRIGHT Gull Rock P01-C 12": the program, the lens, the mark and the
/// casting's number (left out when 0). A title longer than 40 bytes is cut, so that the code stays coarse.
std::string code_words(std::string_view title, std::string_view mark, long long serial);

}  // namespace prismwright
