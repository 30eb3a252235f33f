#include "core/drawing/text_box.h"

#include <algorithm>
#include <array>

namespace prismwright {

namespace {

constexpr unsigned char kFirst = 32;
constexpr unsigned char kLast = 126;
/// Advances of the printed ASCII letters, hundredths of the size, rounded up.
constexpr std::array<int, kLast - kFirst + 1> kPlain = {
    32, 41, 46, 84, 64, 96, 78, 28, 40,  40, 50, 84, 32, 37, 32, 34, 64, 64, 64, 64, 64, 64, 64, 64,
    64, 64, 34, 34, 84, 84, 84, 54, 100, 69, 69, 70, 78, 64, 58, 78, 76, 30, 30, 66, 56, 87, 75, 79,
    61, 79, 70, 64, 62, 74, 69, 99, 69,  62, 69, 40, 34, 40, 84, 50, 50, 62, 64, 55, 64, 62, 36, 64,
    64, 28, 28, 58, 28, 98, 64, 62, 64,  64, 42, 53, 40, 64, 60, 82, 60, 60, 53, 64, 34, 64, 84};
constexpr std::array<int, kLast - kFirst + 1> kBold = {
    35, 46, 53, 84, 70, 101, 88, 31,  46,  46, 53, 84, 38, 42, 38, 37, 70, 70, 70, 70, 70, 70,  70, 70,
    70, 70, 40, 40, 84, 84,  84, 59,  100, 78, 77, 74, 84, 69, 69, 83, 84, 38, 38, 78, 64, 100, 84, 86,
    74, 86, 78, 73, 69, 82,  78, 111, 78,  73, 73, 46, 37, 46, 84, 50, 50, 68, 72, 60, 72, 68,  44, 72,
    72, 35, 35, 67, 35, 105, 72, 69,  72,  72, 50, 60, 48, 72, 66, 93, 65, 66, 59, 72, 37, 72,  84};
/// Latin, Greek and Cyrillic letters with or without accents; everything beyond may be a full square and more.
constexpr int kWideLetter = 134;
constexpr int kDegreeSign = 50;
constexpr int kSquareLetter = 140;
constexpr double kAbove = 0.94;
constexpr double kBelow = 0.24;

/// Bytes of the sound UTF-8 letter at the head of `rest`; 0 where it is broken.
std::size_t letter_bytes(std::string_view rest) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(rest[i]); };
  const unsigned char head = byte(0);
  const std::size_t count = head < 0x80   ? 1
                            : head < 0xC2 ? 0
                            : head < 0xE0 ? 2
                            : head < 0xF0 ? 3
                            : head < 0xF5 ? 4
                                          : 0;
  if (count == 0 || rest.size() < count) return 0;
  for (std::size_t i = 1; i < count; ++i) {
    if ((byte(i) & 0xC0) != 0x80) return 0;
  }
  // Forms that are longer than they need be, halves of pairs, and what lies beyond the last letter.
  if (count == 3 && ((head == 0xE0 && byte(1) < 0xA0) || (head == 0xED && byte(1) > 0x9F))) return 0;
  if (count == 4 && ((head == 0xF0 && byte(1) < 0x90) || (head == 0xF4 && byte(1) > 0x8F))) return 0;
  return count;
}

int advance(std::string_view letter, bool bold) {
  const auto head = static_cast<unsigned char>(letter.front());
  if (letter.size() == 1) {
    if (head < kFirst || head > kLast) return kWideLetter;
    return (bold ? kBold : kPlain)[head - kFirst];
  }
  if (letter == "\u00B0") return kDegreeSign;
  return letter.size() == 2 ? kWideLetter : kSquareLetter;
}

double share_left_of(Anchor anchor) { return anchor == Anchor::left ? 0 : anchor == Anchor::middle ? 0.5 : 1; }

}  // namespace

bool overlap(const PaperBox& a, const PaperBox& b, double clear_mm) {
  return a.low.x < b.high.x + clear_mm && b.low.x < a.high.x + clear_mm && a.low.y < b.high.y + clear_mm &&
         b.low.y < a.high.y + clear_mm;
}

bool holds(const PaperBox& outer, const PaperBox& inner) {
  return outer.low.x <= inner.low.x && outer.low.y <= inner.low.y && outer.high.x >= inner.high.x &&
         outer.high.y >= inner.high.y;
}

bool crosses(const PaperBox& box, PaperPoint from, PaperPoint to) {
  double enters = 0, leaves = 1;
  const auto cut = [&](double start, double step, double low, double high) {
    if (step == 0) return start >= low && start <= high;
    const double a = (low - start) / step;
    const double b = (high - start) / step;
    enters = std::max(enters, std::min(a, b));
    leaves = std::min(leaves, std::max(a, b));
    return enters <= leaves;
  };
  return cut(from.x, to.x - from.x, box.low.x, box.high.x) && cut(from.y, to.y - from.y, box.low.y, box.high.y);
}

double text_width_mm(std::string_view words, double size_mm, bool bold) {
  int sum = 0;
  while (!words.empty()) {
    const std::size_t bytes = std::max<std::size_t>(1, letter_bytes(words));
    sum += advance(words.substr(0, bytes), bold);
    words.remove_prefix(bytes);
  }
  return size_mm * sum / 100;
}

PaperBox box_of(const DrawnText& text) {
  const double width = text_width_mm(text.words, text.size_mm, text.bold);
  const double start = -share_left_of(text.anchor) * width;
  const double up = kAbove * text.size_mm;
  const double down = kBelow * text.size_mm;
  const PaperPoint p = text.place;
  if (text.turned) return {{p.x - up, p.y + start}, {p.x + down, p.y + start + width}};
  return {{p.x + start, p.y - down}, {p.x + start + width, p.y + up}};
}

std::string clean_words(std::string_view words) {
  std::string clean;
  while (!words.empty()) {
    const std::size_t bytes = letter_bytes(words);
    const auto head = static_cast<unsigned char>(words.front());
    if (bytes == 0) {
      clean += '?';
    } else if (bytes == 1 && (head < kFirst || head > kLast)) {
      clean += ' ';
    } else {
      clean += words.substr(0, bytes);
    }
    words.remove_prefix(std::max<std::size_t>(1, bytes));
  }
  return clean;
}

std::size_t fitting_bytes(std::string_view words, double size_mm, double room_mm, bool bold) {
  std::size_t fit = 0;
  while (fit < words.size()) {
    const std::size_t next = fit + std::max<std::size_t>(1, letter_bytes(words.substr(fit)));
    if (fit > 0 && text_width_mm(words.substr(0, next), size_mm, bold) > room_mm) break;
    fit = next;
  }
  return fit;
}

std::string shortened(const std::string& words, double size_mm, double room_mm, bool bold) {
  if (text_width_mm(words, size_mm, bold) <= room_mm) return words;
  std::string kept;
  std::string_view rest = words;
  while (!rest.empty()) {
    const std::size_t bytes = std::max<std::size_t>(1, letter_bytes(rest));
    const std::string longer = kept + std::string(rest.substr(0, bytes));
    if (text_width_mm(longer + "...", size_mm, bold) > room_mm) break;
    kept = longer;
    rest.remove_prefix(bytes);
  }
  return kept + "...";
}

}  // namespace prismwright
