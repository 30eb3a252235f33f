#include "core/book/value_tables.h"

#include <fmt/format.h>

#include "core/book/value_cells.h"
#include "core/book/value_fields.h"

namespace prismwright {
namespace {

void update_row(SQLite::Database& db, const char* table, auto& values, auto&& fields) {
  std::string columns;
  fields(values, [&](const char* column, const auto&) {
    columns += fmt::format("{}\"{}\" = ?", columns.empty() ? "" : ", ", column);
  });
  SQLite::Statement update(db, fmt::format("UPDATE {} SET {} WHERE id = 1", table, columns));
  int place = 0;
  fields(values, [&](const char*, const auto& value) { put(update, ++place, value); });
  if (update.exec() != 1) throw BookDamage(fmt::format("no row in table {}", table));
}

void insert_row(SQLite::Database& db, const char* table, auto& values, auto&& fields) {
  std::string columns = "id";
  std::string marks = "1";
  fields(values, [&](const char* column, const auto&) {
    columns += fmt::format(", \"{}\"", column);
    marks += ", ?";
  });
  SQLite::Statement insert(db, fmt::format("INSERT INTO {} ({}) VALUES ({})", table, columns, marks));
  int place = 0;
  fields(values, [&](const char*, const auto& value) { put(insert, ++place, value); });
  insert.exec();
}

void read_row(SQLite::Database& db, const char* table, auto& values, auto&& fields) {
  std::string columns;
  fields(values, [&](const char* column, const auto&) {
    columns += fmt::format("{}\"{}\"", columns.empty() ? "" : ", ", column);
  });
  SQLite::Statement query(db, fmt::format("SELECT {} FROM {} WHERE id = 1", columns, table));
  if (!query.executeStep()) throw BookDamage(fmt::format("no row in table {}", table));
  int place = 0;
  fields(values, [&](const char*, auto& value) { take(query.getColumn(place++), value); });
}

void write_panels(SQLite::Database& db, const std::vector<Panel>& panels) {
  SQLite::Statement write(
      db,
      "INSERT INTO panel (number, width_deg, axis_shift_deg, blind, screen) VALUES (?, ?, ?, "
      "?, ?) ON CONFLICT (number) DO UPDATE SET width_deg = excluded.width_deg, "
      "axis_shift_deg = excluded.axis_shift_deg, blind = excluded.blind, "
      "screen = excluded.screen");
  int number = 0;
  for (const Panel& panel : panels) {
    write.bind(1, ++number);
    write.bind(2, panel.width_deg);
    write.bind(3, panel.axis_shift_deg);
    write.bind(4, panel.blind ? 1 : 0);
    put(write, 5, panel.screen);
    write.exec();
    write.reset();
  }
  SQLite::Statement drop(db, "DELETE FROM panel WHERE number > ?");
  drop.bind(1, number);
  drop.exec();
}

std::vector<Panel> read_panels(SQLite::Database& db) {
  std::vector<Panel> panels;
  SQLite::Statement query(db,
                          "SELECT number, width_deg, axis_shift_deg, blind, screen FROM panel ORDER BY number");
  while (query.executeStep()) {
    Panel& panel = panels.emplace_back();
    if (query.getColumn(0).getInt64() != static_cast<long long>(panels.size()))
      throw BookDamage("a lost panel");
    take(query.getColumn(1), panel.width_deg);
    take(query.getColumn(2), panel.axis_shift_deg);
    panel.blind = query.getColumn(3).getInt() != 0;
    take(query.getColumn(4), panel.screen);
  }
  return panels;
}

}  // namespace

void insert_values(SQLite::Database& db, const LensValues& values) {
  for_each_table(values,
                 [&](const char* table, auto& group, auto&& fields) { insert_row(db, table, group, fields); });
  write_panels(db, values.panels);
}

void update_values(SQLite::Database& db, const LensValues& values) {
  for_each_table(values,
                 [&](const char* table, auto& group, auto&& fields) { update_row(db, table, group, fields); });
  write_panels(db, values.panels);
}

LensValues read_values(SQLite::Database& db) {
  LensValues values;
  for_each_table(values,
                 [&](const char* table, auto& group, auto&& fields) { read_row(db, table, group, fields); });
  values.panels = read_panels(db);
  return values;
}

}  // namespace prismwright
