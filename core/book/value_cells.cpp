#include "core/book/value_cells.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <charconv>
#include <utility>

#include "core/lens/zone_rows.h"

namespace prismwright {

void refuse_cell(const SQLite::Column& cell) {
  throw BookDamage(fmt::format("an unreadable value in column {}", cell.getName()));
}

void put(SQLite::Statement& statement, int place, const std::string& text) { statement.bind(place, text); }
void put(SQLite::Statement& statement, int place, double number) { statement.bind(place, number); }
void put(SQLite::Statement& statement, int place, const std::optional<double>& number) {
  if (number)
    statement.bind(place, *number);
  else
    statement.bind(place);
}
void put(SQLite::Statement& statement, int place, const std::vector<double>& numbers) {
  statement.bind(place,
                 fmt::format("[{}]", fmt::join(numbers, ", ")));  // shortest text that reads back exactly
}

void put(SQLite::Statement& statement, int place, int count) { statement.bind(place, count); }
void put(SQLite::Statement& statement, int place, long long number) {
  statement.bind(place, static_cast<std::int64_t>(number));
}
void put(SQLite::Statement& statement, int place, const std::vector<ZoneRow>& rows) {
  statement.bind(place, rows_text(rows));
}

void take(const SQLite::Column& cell, std::string& text) {
  if (cell.getType() != SQLITE_TEXT) refuse_cell(cell);
  text = cell.getString();
}

void take(const SQLite::Column& cell, double& number) {
  if (cell.getType() != SQLITE_FLOAT) refuse_cell(cell);
  number = cell.getDouble();
}

void take(const SQLite::Column& cell, std::optional<double>& number) {
  number.reset();
  if (cell.getType() == SQLITE_NULL) return;
  take(cell, number.emplace());
}

void take(const SQLite::Column& cell, std::vector<double>& numbers) {
  std::string text;
  take(cell, text);
  if (text.size() < 2 || text.front() != '[' || text.back() != ']') refuse_cell(cell);
  numbers.clear();
  const char* at = text.data() + 1;
  const char* const end = text.data() + text.size() - 1;
  while (at != end) {
    const auto [after, error] = std::from_chars(at, end, numbers.emplace_back());
    if (error != std::errc{}) refuse_cell(cell);
    at = after;
    if (at == end) return;
    if (end - at < 3 || at[0] != ',' || at[1] != ' ') refuse_cell(cell);
    at += 2;
  }
}

void take(const SQLite::Column& cell, long long& number) {
  if (!cell.isInteger()) refuse_cell(cell);
  number = cell.getInt64();
}
void take(const SQLite::Column& cell, int& count) {
  if (cell.getType() != SQLITE_INTEGER) refuse_cell(cell);
  count = cell.getInt();
}

void take(const SQLite::Column& cell, std::vector<ZoneRow>& rows) {
  std::string text;
  take(cell, text);
  auto read = read_rows(text);
  if (!read) refuse_cell(cell);
  rows = std::move(*read);
}

}  // namespace prismwright
