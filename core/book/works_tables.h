#pragma once

#include <optional>
#include <string>

#include "core/book/sqlite_api.h"
#include "core/works/works_log.h"

namespace prismwright {

/// All records of the works beside the ledger, oldest first; photographs without their bytes. Throws BookDamage
/// on a row that cannot be.
WorksLog read_works_log(SQLite::Database& db);

/// Adds records, all with the present time, and answers them with their numbers, photographs without their
/// bytes. Keeps the content seal; wants the caller's transaction.
WorksLog append_to_works_log(SQLite::Database& db, const WorksLog& more);

/// Adds one log to the end of another.
void add_to(WorksLog& log, const WorksLog& more);

/// The bytes of a photograph, or blank where there is none of that number.
std::optional<std::string> read_photograph(SQLite::Database& db, long long number);

}  // namespace prismwright
