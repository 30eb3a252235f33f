#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/frame/plate_chain.h"

namespace prismwright {

inline constexpr double kEngraved_mm = 5;       ///< height of engraved letters where there is room
inline constexpr double kLeastEngraved_mm = 2;  ///< smaller ones cannot be read on brushed brass

/// Words to be engraved with a single stroke: where their middle stands on a plate, how tall their capitals
/// are, and how far they are turned (anticlockwise).
struct EngravedMark {
  std::string words;
  PlatePoint middle;
  double height_mm = kEngraved_mm;
  double turn_deg = 0;
};

/// Strokes of words from (0, 0), lower left, in reading order: open chains of lines and quarter circles (the
/// dot is a closed one), so that any machine can follow them. Letters of our own: A-Z, 0-9, '-', '.', '/' and
/// blank; small letters become capitals, any other sign an empty box. Nought carries a stroke, O none.
std::vector<PlateChain> engraved_strokes(std::string_view words, double height_mm);

/// From the first letter's left to the last one's right edge, mm; 0 for no words.
double engraved_width_mm(std::string_view words, double height_mm);

/// The strokes where they stand on the plate.
std::vector<PlateChain> strokes_of(const EngravedMark& mark);

}  // namespace prismwright
