#pragma once

#include <string>
#include <vector>

#include "core/drawing/house_words.h"
#include "core/drawing/table_pages.h"

namespace prismwright {

/// Something that stands in the column beside a picture where there is room for all of it, else on a further
/// sheet.
struct ColumnNote {
  std::string heading;
  std::vector<std::string> lines;  ///< as write_column takes them; empty: never in the column
  TableBlock wide;                 ///< the same for a further sheet, with its own heading
};

/// Writes facts, then every note that fits; those that do not are named in the column and answered.
std::vector<TableBlock> fill_column(SheetMaker& maker, const PaperBox& column, std::vector<std::string> facts,
                                    const std::vector<ColumnNote>& notes);

/// All marks, commas between them.
ColumnNote marks_note(const std::vector<std::string>& marks);

/// A heading and words across the table, each broken where it is too long.
TableBlock words_block(const std::string& heading, const std::vector<std::string>& words);

/// The sheet with the picture, then as many as the tables need, titled as one drawing.
Drawing picture_and_tables(UntitledSheet picture, const std::vector<TableBlock>& tables,
                           const HouseWords& words);

}  // namespace prismwright
