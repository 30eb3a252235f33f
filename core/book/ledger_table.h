#pragma once

#include <span>
#include <vector>

#include "core/book/sqlite_api.h"
#include "core/works/ledger.h"

namespace prismwright {

/// The whole ledger, oldest first. Throws BookDamage on a line that cannot be.
std::vector<LedgerEntry> read_ledger(SQLite::Database& db);

/// Adds lines, all with the present time, and answers them with their numbers. Lines to cast without a serial
/// number are given the next ones after `last_serial`, the highest in the book. Keeps the content seal; wants
/// the caller's transaction.
std::vector<LedgerEntry> append_to_ledger(SQLite::Database& db, std::span<const LedgerEntry> entries,
                                          long long last_serial);

/// The highest serial number that any of the lines names; 0 when none does.
long long highest_serial(std::span<const LedgerEntry> entries);

}  // namespace prismwright
