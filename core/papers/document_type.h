#pragma once

#include <string>
#include <vector>

namespace prismwright::document_type {

// Sizes of a document's letters and spaces at A4, mm.
inline constexpr double kInset_mm = 5;  ///< of the text from where cards begin
inline constexpr double kTitle_mm = 7;
inline constexpr double kUnder_mm = 3.6;
inline constexpr double kChapter_mm = 4.2;
inline constexpr double kSection_mm = 3.2;
inline constexpr double kBody_mm = 2.8;
inline constexpr double kCell_mm = 2.4;
inline constexpr double kNote_mm = 2.3;
inline constexpr double kFigure_mm = 2.2;  ///< letters of figures
inline constexpr double kPitch = 1.5;      ///< of lines, in sizes
inline constexpr double kCellPitch = 1.35;
inline constexpr double kCellPad_mm = 0.9;
inline constexpr double kPoint_mm = 4;  ///< indent of sentences with a stroke
inline constexpr double kBetweenHalves_mm = 7;
inline constexpr double kLargerOnA3 = 1.33;

/// The words broken into lines no wider than the room; a word wider than that is shortened.
std::vector<std::string> lines_of(const std::string& words, double size_mm, double room_mm, bool bold = false);

}  // namespace prismwright::document_type
