#pragma once

#include "core/frame/parts_list.h"
#include "ui/models/cell_table.h"

namespace prismwright {

/// Every part of the made frame, alike ones in one line, with the masses of the solids.
std::vector<PartsLine> parts_of(const MadeLens& made);

QString kind_words(PartKind kind);
QString making_words(PartMaking making);
QString metal_words(PartMetal metal);
QStringList marks_of(const PartsLine& line);
/// "P01-rib-left and 7 alike".
QString marks_words(const QStringList& marks);
/// "12.4 kg, 139 g of it steel".
QString total_words(const std::vector<PartsLine>& lines);

/// The parts list as a table, a row for each line.
CellSheet parts_sheet(const std::vector<PartsLine>& lines, bool inches);

}  // namespace prismwright
