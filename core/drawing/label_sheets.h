#pragma once

#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/drawing/drawing.h"

namespace prismwright {

/// What stands on one label.
struct PrismLabel {
  std::string mark;
  long long serial = 0;            ///< of the casting; 0: none yet, then the label has no number
  std::vector<std::string> lines;  ///< small print below, as many as there is room for
};

/// How labels stand on their sheet: rows and columns of one size, even gaps, within a margin.
struct LabelSheetSettings {
  Paper paper = Paper::a4;  ///< A4 or Letter, upright
  int columns = 3;
  int rows = 8;
  double margin_mm = 8;    ///< from the paper's edge to the outer labels
  double gap_mm = 2;       ///< between labels
  int used = 0;            ///< labels of the first sheet that are gone already
  bool cut_lines = false;  ///< for plain paper: every label in a thin frame
};

/// A module of a printed code smaller than this is lost on common printers and cameras (common practice).
inline constexpr double kLeastModule_mm = 0.35;

/// Label after label, row by row from the top left; each with its QR code (code_words), mark and number.
///
/// The same size of letters and codes on all. Refused: no label, rows or columns outside 1 to 40, margin or gap
/// outside 0 to 60 mm, as many used as a sheet holds, and labels too small for a code of kLeastModule_mm or for
/// the longest mark 2 mm high.
Outcome<Drawing> label_sheets(const std::string& title, const std::vector<PrismLabel>& labels,
                              const LabelSheetSettings& settings);

}  // namespace prismwright
