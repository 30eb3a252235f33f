#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "core/drawing/drawing.h"
#include "core/drawing/line_view.h"
#include "core/works/mould_facts.h"

namespace prismwright {

/// A piece of an undercut face as it is seen: closed loops on the plane of the view, mm of the master. A loop
/// within another is a hole in it.
struct UndercutPatch {
  std::size_t undercut = 0;  ///< index into the draw's undercuts
  std::vector<std::vector<PaperPoint>> loops;
  double area_mm2 = 0;  ///< that is seen, foreshortened
  PaperPoint middle;    ///< a place well inside what is seen
};

/// A master seen from one side, with what is undercut on it.
struct MouldView {
  SpaceVector right{0, 1, 0};  ///< unit vectors of the plane of view, master's frame
  SpaceVector up{0, 0, 1};
  SpaceVector eye{1, 0, 0};  ///< towards the eye
  LineView lines;
  std::vector<UndercutPatch> patches;  ///< at most one for each undercut
};

/// Pictures of a master by which its mould is judged.
struct MouldPicture {
  std::vector<MouldView> views;
};

/// Letter of an undercut, by its place in the list: "a", "b", ...
std::string undercut_letter(std::size_t undercut);
/// What stands beside it in a picture: "a: 120.5 mm2, 3.2 mm deep", or "b: 40.1 mm2, draft 0.12 deg".
std::string undercut_label(const DrawFacts& draw, std::size_t undercut, bool inches);
/// "from the sea, the anticlockwise end and above", of a direction towards the eye.
std::string eye_words(SpaceVector eye);

/// What the caller says on the sheet.
struct MouldSheetWords {
  std::string title;               ///< of the lens
  std::string name;                ///< of the master
  std::string date;                ///< YYYY-MM-DD
  std::vector<std::string> marks;  ///< of the prisms that share it
  std::vector<std::string> notes;  ///< sentences on the mould, or why there is none
  Paper paper = Paper::a4;
  bool inches = false;
  bool bare = false;  ///< the views alone, as large as an A5 sheet takes them at no round scale: for a screen
};

/// The mould's sheet: the master from two sides with the way that its halves are drawn, every undercut face
/// hatched (rising lines where it is hidden, falling ones where it is steep), outlined, lettered and labelled
/// with area and depth; the same in words beside it. Where nothing is undercut the sheet says so.
Sheet mould_sheet(const DrawFacts& draw, const MouldPicture& picture, const MouldSheetWords& words);

}  // namespace prismwright
