#pragma once

#include <array>
#include <string>
#include <utility>

#include "core/drawing/sheet_maker.h"

namespace prismwright {

/// What stands at the foot of any sheet: title and subject, and eight cells of caption and words in two rows.
struct TitleCells {
  static constexpr std::size_t kColumns = 4;
  std::string title;
  std::string subject;  ///< what this sheet shows
  std::array<std::pair<std::string, std::string>, 2 * kColumns> cells;
};
void draw_title_block(SheetMaker& maker, const TitleCells& words);

/// What stands at the foot of every sheet of a section.
struct TitleWords {
  std::string title;
  std::string subject;  ///< what this sheet shows
  std::string order;
  std::string focal_distance;
  std::string material;
  std::string material_caption = "material, index";
  std::string units;
  std::string scale;
  std::string date;
  std::string revision;
  std::string sheet;  ///< "1 of 4"
};
void draw_title_block(SheetMaker& maker, const TitleWords& words);

}  // namespace prismwright
