#pragma once

#include <span>
#include <vector>

#include "core/book/sqlite_api.h"
#include "core/light/bench_reading.h"

namespace prismwright {

/// All readings of the laser bench, oldest first. Throws BookDamage on a line that cannot be.
std::vector<BenchReading> read_readings(SQLite::Database& db);

/// Adds readings, all with the present time, and answers them with their numbers. Keeps the content seal; wants
/// the caller's transaction.
std::vector<BenchReading> append_readings(SQLite::Database& db, std::span<const BenchReading> readings);

}  // namespace prismwright
