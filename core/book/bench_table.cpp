#include "core/book/bench_table.h"

#include <fmt/format.h>

#include "core/book/content_seal.h"
#include "core/book/utc_clock.h"
#include "core/book/value_cells.h"

namespace prismwright {
namespace {

BenchReading reading_in(SQLite::Statement& query) {
  BenchReading reading;
  reading.number = query.getColumn(0).getInt64();
  take(query.getColumn(1), reading.when_utc);
  take(query.getColumn(2), reading.mark);
  take(query.getColumn(3), reading.height_mm);
  take(query.getColumn(4), reading.aside_mm);
  take(query.getColumn(5), reading.board_mm);
  take(query.getColumn(6), reading.by);
  take(query.getColumn(7), reading.note);
  return reading;
}

void insert_reading(SQLite::Statement& insert, const BenchReading& reading) {
  insert.bind(1, static_cast<std::int64_t>(reading.number));
  put(insert, 2, reading.when_utc);
  put(insert, 3, reading.mark);
  put(insert, 4, reading.height_mm);
  put(insert, 5, reading.aside_mm);
  put(insert, 6, reading.board_mm);
  put(insert, 7, reading.by);
  put(insert, 8, reading.note);
  insert.exec();
  insert.reset();
}

}  // namespace

std::vector<BenchReading> read_readings(SQLite::Database& db) {
  std::vector<BenchReading> readings;
  SQLite::Statement query(db,
                          "SELECT number, when_utc, mark, height_mm, aside_mm, board_mm, by_name, note "
                          "FROM bench_readings ORDER BY number");
  while (query.executeStep()) readings.push_back(reading_in(query));
  return readings;
}

std::vector<BenchReading> append_readings(SQLite::Database& db, std::span<const BenchReading> readings) {
  const std::int64_t last = db.execAndGet("SELECT coalesce(max(number), 0) FROM bench_readings").getInt64();
  SQLite::Statement insert(db,
                           "INSERT INTO bench_readings (number, when_utc, mark, height_mm, aside_mm, board_mm, "
                           "by_name, note) VALUES (?, ?, ?, ?, ?, ?, ?, ?)");
  std::vector<BenchReading> added(readings.begin(), readings.end());
  const std::string now = now_utc();
  long long number = last;
  for (BenchReading& reading : added) {
    reading.number = ++number;
    reading.when_utc = now;
    insert_reading(insert, reading);
  }
  renew_seal(db, rows_mark(db, "bench_readings", fmt::format("number > {}", last)));
  return added;
}

}  // namespace prismwright
