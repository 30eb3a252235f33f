#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/drawing/section_images.h"

namespace prismwright {

/// A scale that makers have rulers for.
struct DrawingScale {
  const char* words = "1:1";
  double paper_per_mm = 1;
};
const std::vector<DrawingScale>& drawing_scales();  ///< from the largest
/// The largest at which a thing fits a room of paper; the smallest of all where none does.
const DrawingScale& largest_scale(double wide_mm, double high_mm, double room_wide_mm, double room_high_mm);

/// What the first sheet needs beside the section itself, mm of paper.
struct SheetRooms {
  static constexpr double title_block = 26;  ///< at the foot, inside the border
  static constexpr double scale_bar = 10;    ///< above it
  static constexpr double lower = 14;        ///< for the dimension below the section
  static constexpr double upper = 8;
  static constexpr double heights = 31;  ///< left of the lens axis
  static constexpr double leaders = 14;  ///< right of the glass
  static constexpr double marks = 42;    ///< the column of marks
};

/// Sheet, scale and place of the section.
struct SheetLayout {
  SheetSize size;
  DrawingScale scale;
  PaperMap map;
};
/// The layout on this paper with the largest scale, upright where both ways are alike; on A4 or else A3 when no
/// paper is given. Blank when even the smallest scale is too large.
std::optional<SheetLayout> lay_out(const SectionReach& reach, std::optional<Paper> paper);

}  // namespace prismwright
