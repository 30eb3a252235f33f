#pragma once

#include <array>
#include <optional>

#include "core/drawing/sheet_maker.h"
#include "core/works/stage.h"

namespace prismwright {

/// The sign of a stage on paper: "Dr", "Ma", ... as in the window; "X" for scrapped.
const char* sign_of(Stage stage);

/// The tone of a stage under black words: the window's, mixed with white so far that words stand out from the
/// deepest by 4.5 to 1 or better (contrast of luminances as accessible text is measured).
PaperColour tone_of(Stage stage);
/// Scrapped prisms are hatched besides.
bool hatched(Stage stage);

/// What each stage's tone and sign mean, with how many prisms stand there where that is told; in rows from the
/// top left of the box.
void draw_stage_legend(SheetMaker& maker, const PaperBox& room,
                       const std::optional<std::array<int, kStages.size()>>& counts);
/// Height that the legend takes in that width, mm.
double stage_legend_height_mm(double wide_mm);

}  // namespace prismwright
