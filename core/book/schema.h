#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/book/sqlite_api.h"

namespace prismwright {

/// SQLite's application_id of a lensbook: the letters PWLB.
inline constexpr std::uint32_t kApplicationId = 0x50574C42;
/// The version of the book (SQLite's user_version) that this program writes. It reads all from 1 up to this.
inline constexpr int kBookVersion = 7;

/// The tables that hold LensValues: what undo and redo work on. The ledger and the growing tables are
/// not among them.
inline constexpr std::array<const char*, 9> kValueTables = {"brief", "material", "section", "frame",  "lamp",
                                                            "light", "works",    "panel",   "variant"};

/// The tables beside the ledger that only ever grow: readings of the bench and records of the works.
inline constexpr std::array<const char*, 7> kGrowingTables = {
    "bench_readings",  "vessel_loads", "measurements", "decisions",
    "shrink_readings", "photographs",  "spendings"};

/// Makes the empty tables of the given version in an empty database, and sets application_id and user_version.
void make_schema(SQLite::Database& db, int version = kBookVersion);

/// Brings the tables from the database's user_version to kBookVersion; rows are kept. To be called inside a
/// transaction; the content seal must be made anew afterwards.
void migrate_schema(SQLite::Database& db);

/// Every table and trigger as text without white space, sorted: equal for equal schemas.
std::vector<std::string> schema_of(SQLite::Database& db);
/// What schema_of answers for an unaltered book of that version. Makes such a book in memory step by step,
/// which takes tens of milliseconds.
std::vector<std::string> expected_schema(int version);

/// A sum over what schema_of answers.
std::uint64_t schema_mark(const std::vector<std::string>& schema);
/// Whether the tables are those of a book of that version, 1 to kBookVersion, to the letter: told by their sum.
bool schema_fits(SQLite::Database& db, int version);

int user_version(SQLite::Database& db);

}  // namespace prismwright
