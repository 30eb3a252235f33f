#pragma once

#include <string>
#include <vector>

#include "core/frame/frame_parts.h"

namespace prismwright {

/// Holes of a plate that are alike.
struct HoleRow {
  int count = 0;
  double diameter_mm = 0;
  double sink_diameter_mm = 0;  ///< 0: not sunk
  bool sunk_in_back = false;
  double depth_mm = 0;  ///< of holes drilled into an edge; 0: right through the plate
  std::string use;
};

/// Round holes through the plate, in the order of their first.
std::vector<HoleRow> hole_rows(const FlatPart& part);
/// Place in hole_rows(part) of one of its holes.
std::size_t row_of(const std::vector<HoleRow>& rows, const PlateHole& hole);
/// Holes drilled into the plate's edges after it is cut.
std::vector<HoleRow> bore_rows(const FlatPart& part);
/// "4 x 3.4 mm clears M3, sunk to 6.3 mm from the back".
std::string words_of(const HoleRow& row);

/// Depths of the blind pockets, each once, in mm.
std::vector<double> pocket_depths_mm(const FlatPart& part);

/// Marks in few words: one mark, or "P01-rib-left and 7 alike".
std::string short_marks(const std::vector<std::string>& marks);

/// What a shop must know of a plate, line by line: marks, metal, thickness and number, unit, true edges, the
/// face that is seen, pockets, holes, and drilling after the cut.
std::vector<std::string> cut_notes(const FlatPart& part, const std::vector<std::string>& marks);

/// "P01-rib-left_5mm_x8" for the file of so many alike plates: letters, digits, '-', '_' and '.' only.
std::string cut_file_stem(const FlatPart& first, std::size_t count);

/// The words with every sign that file names cannot carry everywhere as '-'.
std::string safe_stem(const std::string& words);

}  // namespace prismwright
