#pragma once

#include "core/frame/nest.h"
#include "ui/models/cell_table.h"

namespace prismwright {

/// The sheets that flat parts are cut from, a row for each; the marks of its plates are found by the filter.
CellSheet sheets_sheet(const Nest& nest, bool inches);

/// Sheets and use of all together: "3, 61 % used".
QString sheets_words(const Nest& nest);

}  // namespace prismwright
