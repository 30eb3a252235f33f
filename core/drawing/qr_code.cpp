#include "core/drawing/qr_code.h"

#include <qrencode.h>

#include <memory>

#include <fmt/format.h>

namespace prismwright {

namespace {

constexpr std::size_t kMostBytes = 2331;  ///< ISO/IEC 18004: version 40, level M, bytes
constexpr std::size_t kTitleBytes = 40;

struct Free {
  void operator()(QRcode* code) const { QRcode_free(code); }
};

/// Cut before the letter that would pass the limit, never within a letter of more than one byte.
std::string_view cut(std::string_view words, std::size_t most) {
  if (words.size() <= most) return words;
  while (most > 0 && (static_cast<unsigned char>(words[most]) & 0xC0) == 0x80) --most;
  words = words.substr(0, most);
  while (!words.empty() && words.back() == ' ') words.remove_suffix(1);
  return words;
}

/// A bar of dark modules. The pen's own width is kept within the bar, or light modules would lose it.
Stroke bar(PaperPoint low, PaperPoint high) {
  const double half = width_mm(LineClass::hatch) / 2;
  Stroke stroke =
      rectangle_stroke({low.x + half, low.y + half}, {high.x - half, high.y - half}, LineClass::hatch);
  stroke.filled = true;
  return stroke;
}

}  // namespace

Outcome<QrCode> qr_code(std::string_view text) {
  if (text.empty()) return request_problem("qr_code", "", "A code needs words to hold. Give it some.");
  if (text.size() > kMostBytes)
    return request_problem(
        "qr_code", "",
        fmt::format("{} bytes are more than a QR code takes ({}). Say less in it.", text.size(), kMostBytes));
  const std::unique_ptr<QRcode, Free> made(QRcode_encodeData(
      static_cast<int>(text.size()), reinterpret_cast<const unsigned char*>(text.data()), 0, QR_ECLEVEL_M));
  if (!made) return request_problem("qr_code", "", "The QR code could not be made. Say less in it.");
  QrCode code;
  code.side = made->width;
  const int modules = made->width * made->width;
  for (int i = 0; i < modules; ++i) code.dark.push_back((made->data[i] & 1) != 0);
  return code;
}

std::vector<Stroke> qr_strokes(const QrCode& code, const PaperBox& ground) {
  const double module = code.module_mm(ground.high.x - ground.low.x);
  const double left = ground.low.x + QrCode::kQuiet * module;
  const double top = ground.high.y - QrCode::kQuiet * module;
  std::vector<Stroke> bars;
  for (int row = 0; row < code.side; ++row) {
    for (int column = 0; column < code.side; ++column) {
      if (!code.at(row, column)) continue;
      const int first = column;
      while (column + 1 < code.side && code.at(row, column + 1)) ++column;
      bars.push_back(bar({left + first * module, top - (row + 1) * module},
                         {left + (column + 1) * module, top - row * module}));
    }
  }
  return bars;
}

std::string code_words(std::string_view title, std::string_view mark, long long serial) {
  const std::string clean = clean_words(title);
  const std::string_view said = cut(clean, kTitleBytes);
  std::string words = "PRISMWRIGHT ";
  if (!said.empty()) words += std::string(said) + " ";
  words += mark;
  if (serial != 0) words += fmt::format(" {}", serial);
  return words;
}

}  // namespace prismwright
