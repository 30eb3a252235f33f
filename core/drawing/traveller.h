#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/drawing/drawing.h"
#include "core/optics/profile.h"
#include "core/works/inspection.h"
#include "core/works/section_corners.h"
#include "core/works/stage.h"

namespace prismwright {

/// A kind of prism as a traveller shows it.
struct TravellerPiece {
  std::string name;   ///< of its master, "U07"
  std::string words;  ///< "upper reflecting, 31.4 mm thick, 412 g"
  Profile profile;
  std::vector<SectionCorner> corners;
  std::vector<Feature> features;
};

/// When and by whom a stage was reached.
struct TravellerStamp {
  std::string day;  ///< YYYY-MM-DD
  std::string by;
  std::string note;
};

/// One prism on its way through the shop.
struct TravellerCasting {
  std::string mark;
  long long serial = 0;   ///< 0: not cast yet
  std::size_t piece = 0;  ///< index into Traveller::pieces
  std::map<Stage, TravellerStamp> reached;
  std::vector<std::string> record;  ///< what else was written down, a line each, oldest first
};

/// The sheet that goes with one prism, or with a tray of them, through the shop.
struct Traveller {
  std::string title;  ///< of the lens
  std::string date;   ///< YYYY-MM-DD, of the print
  std::vector<TravellerPiece> pieces;
  std::vector<TravellerCasting> castings;  ///< one: the prism's own sheet; more: a tray's
};

/// A stage that a traveller has a box for: mastered to glazed.
std::vector<Stage> traveller_stages();

/// One prism: its mark, number and code, the section with its widths, what to measure with room for the
/// readings, a box for date and initials of every stage (filled where it was recorded), what was recorded so
/// far, the cautions in short. A tray: the sections of its pieces and a row of boxes for each prism, on as many
/// sheets as it takes. Texts never cover each other, nor the border. Refused: no castings, a piece that is not
/// in the list.
Outcome<Drawing> traveller_sheets(const Traveller& traveller, Paper paper);

}  // namespace prismwright
