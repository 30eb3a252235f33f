#include "core/book/ledger_table.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/book/content_seal.h"
#include "core/book/row_cursor.h"
#include "core/book/utc_clock.h"
#include "core/book/value_cells.h"

namespace prismwright {
namespace {

Stage stage_in(std::string_view word) {
  const std::optional<Stage> stage = find_stage(word);
  if (!stage) throw BookDamage("an unknown stage in the ledger");
  return *stage;
}

LedgerEntry line_in(const RowCursor& row) {
  LedgerEntry line;
  line.number = row.number(0);
  line.when_utc = row.text(1);
  line.mark = row.text(2);
  line.from = stage_in(row.text(3));
  line.to = stage_in(row.text(4));
  line.by = row.text(5);
  line.note = row.text(6);
  if (!row.empty(7)) line.back_to = stage_in(row.text(7));
  if (!row.empty(8)) line.serial = row.number(8);
  if (!row.empty(9)) line.load = row.number(9);
  return line;
}

/// Nought stands for none.
void put_number(SQLite::Statement& insert, int place, long long number) {
  if (number == 0)
    insert.bind(place);
  else
    put(insert, place, number);
}

void insert_line(SQLite::Statement& insert, const LedgerEntry& line) {
  insert.bind(1, static_cast<std::int64_t>(line.number));
  insert.bind(2, line.when_utc);
  insert.bind(3, line.mark);
  insert.bind(4, std::string(name_of(line.from)));
  insert.bind(5, std::string(name_of(line.to)));
  insert.bind(6, line.by);
  insert.bind(7, line.note);
  if (line.back_to)
    insert.bind(8, std::string(name_of(*line.back_to)));
  else
    insert.bind(8);
  put_number(insert, 9, line.serial);
  put_number(insert, 10, line.load);
  insert.exec();
  insert.reset();
}

}  // namespace

std::vector<LedgerEntry> read_ledger(SQLite::Database& db) {
  std::vector<LedgerEntry> ledger;
  ledger.reserve(static_cast<std::size_t>(db.execAndGet("SELECT count(*) FROM ledger").getInt64()));
  RowCursor rows(db,
                 "SELECT number, when_utc, mark, from_stage, to_stage, by_name, note, back_to_stage, serial, "
                 "load FROM ledger ORDER BY number");
  while (rows.step()) ledger.push_back(line_in(rows));
  return ledger;
}

std::vector<LedgerEntry> append_to_ledger(SQLite::Database& db, std::span<const LedgerEntry> entries,
                                          long long last_serial) {
  const std::int64_t last = db.execAndGet("SELECT coalesce(max(number), 0) FROM ledger").getInt64();
  SQLite::Statement insert(db,
                           "INSERT INTO ledger (number, when_utc, mark, from_stage, to_stage, by_name, note, "
                           "back_to_stage, serial, load) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
  std::vector<LedgerEntry> lines(entries.begin(), entries.end());
  const std::string now = now_utc();
  long long number = last;
  // Numbers that the lines bring along are taken too.
  long long serial = std::max(last_serial, highest_serial(lines));
  for (LedgerEntry& line : lines) {
    line.number = ++number;
    line.when_utc = now;
    if (line.to == Stage::cast && line.serial == 0) line.serial = ++serial;
    insert_line(insert, line);
  }
  renew_seal(db, rows_mark(db, "ledger", fmt::format("number > {}", last)));
  return lines;
}

long long highest_serial(std::span<const LedgerEntry> entries) {
  long long highest = 0;
  for (const LedgerEntry& line : entries) highest = std::max(highest, line.serial);
  return highest;
}

}  // namespace prismwright
