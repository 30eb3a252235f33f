#pragma once

#include <string>
#include <vector>

#include "core/drawing/sheet_maker.h"

namespace prismwright {

/// Lines of words from the top of the column downwards, long ones broken; a line that begins with a '#' is a
/// heading, one with tabs a row of cells, all but the first of them ending at even steps. Where they do not all
/// fit, the last one says how many are left out.
void write_column(SheetMaker& maker, const PaperBox& column, const std::vector<std::string>& lines);
std::size_t column_room(const PaperBox& column);  ///< lines that it holds
/// Lines that these take once they are broken.
std::size_t column_rows(const PaperBox& column, const std::vector<std::string>& lines);

}  // namespace prismwright
