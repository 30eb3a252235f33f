#pragma once

#include <string>

#include "core/drawing/sheet_maker.h"

namespace prismwright {

/// A level dimension between two places at height `y`, its words above the middle of the line (beside it where
/// they are wider than it).
void level_dimension(SheetMaker& maker, double from_x, double to_x, double y, const std::string& words);

/// An upright dimension at `x`, its words along the line, left of it.
void upright_dimension(SheetMaker& maker, double from_y, double to_y, double x, const std::string& words);

/// A bar that shows a round length at the given scale, `low` its left foot. It takes about 60 mm by 7 mm: the
/// bar itself `scale_bar_mm`, and half the words at its end.
double scale_bar_mm(double paper_per_mm, bool inches);
void scale_bar(SheetMaker& maker, PaperPoint low, double paper_per_mm, bool inches);

}  // namespace prismwright
