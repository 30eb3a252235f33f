#pragma once

#include "core/base/outcome.h"
#include "core/drawing/house_words.h"
#include "core/lens/plan.h"
#include "core/works/ledger.h"

namespace prismwright {

/// The panel chart on paper: the lens unrolled, panels left to right, zones by height, in true proportions,
/// every prism with its mark once, its tone and a letter telling its stage; a legend counts them. Panels that
/// are alike all stand there; where marks would be too small to be read, the chart goes on over several sheets.
/// Refused: a lens larger than the smallest scale takes.
Outcome<Drawing> chart_sheets(const LensPlan& plan, const StageByMark& stages, const HouseWords& words);

}  // namespace prismwright
