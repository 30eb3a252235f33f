#pragma once

#include <cstdint>
#include <string>

#include "core/book/sqlite_api.h"

namespace prismwright {

/// The seal tells an altered book from a whole one: it sums up every row of values, steps, ledger and growing
/// tables, so that one changed byte anywhere in them, or a row that went missing, no longer fits. It is no
/// guard against forgery.
///
/// Each row gives a 64-bit mark (table, types and bytes of its cells); the seal is the exclusive or of all
/// marks. An edit therefore renews it from the rows it touches alone: what goes out and what comes in are both
/// added.
///
/// Up to version 6 of the book the cells went into a mark byte by byte; since then they go in eight bytes at a
/// time, which tells photographs of many megabytes from altered ones in a fraction of the time. Every function
/// that writes wants a book of kBookVersion.
using SealMark = std::uint64_t;

/// The marks of some rows of a table together; `where` is SQL ("undone = 1"), empty for all rows.
SealMark rows_mark(SQLite::Database& db, const std::string& table, const std::string& where = "");
/// The marks of all value tables together.
SealMark values_mark(SQLite::Database& db);

/// Adds a change to the stored seal.
void renew_seal(SQLite::Database& db, SealMark change);
/// Works the seal out from every row and stores it.
void make_seal(SQLite::Database& db);
/// Whether the stored seal fits the rows of a book of that version.
bool seal_fits(SQLite::Database& db, int version);

}  // namespace prismwright
