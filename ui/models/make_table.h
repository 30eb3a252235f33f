#pragma once

#include "core/works/make_list.h"
#include "ui/models/cell_table.h"

namespace prismwright {

/// The make list as a table, one row for each master; a row speaks of the prisms that it serves.
CellSheet make_sheet(const MakeList& list, bool inches);

/// "31 masters for 248 prisms, 31 still to make · 276 castings to pour, ..." and what the masters' likeness
/// comes to.
QString make_words(const MakeList& list);

/// What to do first: the first few rows of the list's order in a line each.
QStringList next_words(const MakeList& list, int lines);

}  // namespace prismwright
