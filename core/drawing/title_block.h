#pragma once

#include <string>

#include "core/drawing/sheet_maker.h"

namespace prismwright {

/// What stands at the foot of every sheet.
struct TitleWords {
  std::string title;
  std::string subject;  ///< what this sheet shows
  std::string order;
  std::string focal_distance;
  std::string material;
  std::string units;
  std::string scale;
  std::string date;
  std::string revision;
  std::string sheet;  ///< "1 of 4"
};
void draw_title_block(SheetMaker& maker, const TitleWords& words);

}  // namespace prismwright
