#pragma once

#include <string>
#include <vector>

#include "core/drawing/sheet_layout.h"
#include "core/drawing/sheet_maker.h"
#include "core/optics/profile.h"
#include "core/works/section_corners.h"

namespace prismwright {

/// The section of one piece of glass, drawn by itself.
struct SectionPicture {
  std::string name;  ///< below it, before the scale
  Profile profile;
  std::vector<SectionCorner> corners;
  std::vector<std::string> face_words;  ///< beside each face of the profile, or empty
  bool leaders = false;     ///< words that find no room beside their face stand farther off, on a leader
  bool both_sides = false;  ///< where the turning axis closes it: with its mirror image beyond the axis
  double rim_wide_mm = 9;   ///< kept left and right for letters and words
  double rim_high_mm = 9;
};

/// Draws it in a box of the sheet, to the largest drawing scale that fits: hatched, its corners lettered, a
/// turning axis as a centre line, the words of every face beside it (the longest face first: where room is
/// short, lands go without), name and scale below. Answers the scale.
const DrawingScale& draw_section_picture(SheetMaker& maker, const SectionPicture& picture,
                                         const PaperBox& room);

/// The scale that a section has in a room, and the height of the lowest room of that width in which it still
/// has it.
struct SectionPlace {
  const DrawingScale* scale = nullptr;
  double height_mm = 0;
};
SectionPlace section_place(const SectionPicture& picture, const PaperBox& room);

}  // namespace prismwright
