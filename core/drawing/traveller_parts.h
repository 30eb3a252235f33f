#pragma once

#include <string>
#include <vector>

#include "core/drawing/sheet_maker.h"
#include "core/drawing/traveller.h"

namespace prismwright {

/// The section of a piece in a box of the sheet, to the largest drawing scale that fits: hatched, its corners
/// lettered, the width of every face beside it, name and scale below. Answers the scale in words.
std::string draw_piece(SheetMaker& maker, const TravellerPiece& piece, const PaperBox& room);

/// What to measure, with a blank for each reading; as many rows as there is room for, and a last one that says
/// how many are left out.
void draw_measures(SheetMaker& maker, const std::vector<Feature>& features, const PaperBox& room);

/// A row of boxes for every stage, filled where it was reached. Answers the height that it took, mm.
double draw_stage_rows(SheetMaker& maker, const TravellerCasting& casting, const PaperBox& room);

/// One row of a table of ruled cells from the left; texts are shortened to their cells. Widths in mm.
void draw_ruled_row(SheetMaker& maker, PaperPoint top_left, double height_mm, const std::vector<double>& widths,
                    const std::vector<std::string>& cells, bool head = false);

/// Lines from the top down, each broken where it is wider than the room; answers where the next would begin.
/// Where not all fit, the last one says how many are left out.
double write_lines(SheetMaker& maker, const std::vector<std::string>& lines, const PaperBox& room);

/// The cautions of casting in short: head, first and last sentence of each.
std::vector<std::string> short_cautions();
/// Height that write_lines takes for all of them, mm.
double height_of_lines(const std::vector<std::string>& lines, double width_mm);

}  // namespace prismwright
