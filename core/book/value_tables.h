#pragma once

#include "core/book/sqlite_api.h"
#include "core/lens/lens_values.h"

namespace prismwright {

/// Fills the value tables of a new book (no rows yet).
void insert_values(SQLite::Database& db, const LensValues& values);
/// Writes every value into the rows of a book; to be called inside a transaction.
void update_values(SQLite::Database& db, const LensValues& values);
/// Reads every value; throws BookDamage when a row is missing or a cell is of another type.
LensValues read_values(SQLite::Database& db);

}  // namespace prismwright
