#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/drawing/drawing.h"
#include "core/drawing/sheet_maker.h"
#include "core/drawing/title_block.h"
#include "core/lens/lens_values.h"

namespace prismwright {

/// What the title blocks of all papers of one lens have in common, and how the papers are wanted.
struct HouseWords {
  std::string title;
  std::string client;
  std::string order;  ///< in words, "fourth order"
  double focal_mm = 0;
  std::string material;        ///< in words, with the index: "acrylic, 1.49180"
  std::string date;            ///< YYYY-MM-DD
  std::string revision;        ///< any short text
  std::optional<Paper> paper;  ///< blank: A4 where the thing stands large enough on it, else A3
  bool inches = false;         ///< lengths are written in inches
};
HouseWords house_words(const LensValues& values, const std::string& date, const std::string& revision);

/// A sheet that is drawn but for its title block: what it shows, and its scale in words ("none" for tables).
struct UntitledSheet {
  SheetMaker maker;
  std::string subject;
  std::string scale;
  std::string metal = {};  ///< of the parts that it shows; blank: the title block tells the glass of the lens
};
/// Puts the title block at the foot of each, counted "1 of 4".
Drawing titled(std::vector<UntitledSheet> sheets, const HouseWords& words);

}  // namespace prismwright
