#pragma once

#include <string>
#include <string_view>

#include "core/drawing/drawing.h"

namespace prismwright {

/// An upright rectangle on the sheet, mm.
struct PaperBox {
  PaperPoint low;
  PaperPoint high;
};
/// The two share ground, or come nearer than `clear_mm` to each other.
bool overlap(const PaperBox& a, const PaperBox& b, double clear_mm = 0);
bool holds(const PaperBox& outer, const PaperBox& inner);
/// A straight line from `from` to `to` runs through the box.
bool crosses(const PaperBox& box, PaperPoint from, PaperPoint to);

/// Width that words take at most, mm. The table is of a wide sans face (DejaVu Sans, bold where asked); letters
/// outside ASCII count as the widest of their kind, so that no common sans face needs more.
double text_width_mm(std::string_view words, double size_mm, bool bold = false);
/// The ground of a text, accents and tails included.
PaperBox box_of(const DrawnText& text);

/// Words fit to be drawn: sound UTF-8 on one line. Broken bytes become "?", line ends and tabs blanks.
std::string clean_words(std::string_view words);
/// How many bytes from the front are no wider than the room: whole letters, and one of them at least.
std::size_t fitting_bytes(std::string_view words, double size_mm, double room_mm, bool bold = false);
/// The words, shortened with three dots at the end where they are wider than `room_mm`.
std::string shortened(const std::string& words, double size_mm, double room_mm, bool bold = false);

}  // namespace prismwright
