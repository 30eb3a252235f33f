#include "core/book/works_tables.h"

#include <fmt/format.h>

#include <optional>

#include "core/book/content_seal.h"
#include "core/book/utc_clock.h"
#include "core/book/value_cells.h"

namespace prismwright {
namespace {

// A photograph's bytes on the way into their cell.
struct Bytes {
  const std::string& of;
};

void put(SQLite::Statement& statement, int place, const Bytes& bytes) {
  statement.bind(place, bytes.of.data(), static_cast<int>(bytes.of.size()));
}
// Not read with the rest: they may be large.
void take(const SQLite::Column&, const Bytes&) {}
using prismwright::put;
using prismwright::take;

/// Which column holds what: visit_table(name, entries, fields) for each table; fields(entry, visit) then calls
/// visit(column, member) for each column between when_utc and by_name.
template <class Log, class VisitTable>
void for_each_record_table(Log& log, VisitTable&& visit_table) {
  visit_table("vessel_loads", log.loads, [](auto& load, auto&& visit) {
    visit("resin", load.resin);
    visit("resin_lot", load.resin_lot);
    visit("tint", load.tint);
    visit("resin_g", load.resin_g);
    visit("initiator_g", load.initiator_g);
    visit("tint_g", load.tint_g);
  });
  visit_table("measurements", log.measurements, [](auto& measured, auto&& visit) {
    visit("mark", measured.mark);
    visit("serial", measured.serial);
    visit("feature", measured.feature);
    visit("measured", measured.measured);
  });
  visit_table("decisions", log.decisions, [](auto& decision, auto&& visit) {
    visit("mark", decision.mark);
    visit("serial", decision.serial);
    visit("kind", decision.kind);
  });
  visit_table("shrink_readings", log.shrink, [](auto& reading, auto&& visit) {
    visit("piece", reading.piece);
    visit("direction", reading.direction);
    visit("master_mm", reading.master_mm);
    visit("casting_mm", reading.casting_mm);
    visit("resin", reading.resin);
    visit("resin_lot", reading.resin_lot);
  });
  visit_table("photographs", log.photographs, [](auto& photograph, auto&& visit) {
    visit("mark", photograph.mark);
    visit("serial", photograph.serial);
    visit("name", photograph.name);
    visit("media", photograph.media);
    const Bytes bytes{photograph.bytes};
    visit("bytes", bytes);
  });
  visit_table("spendings", log.spendings, [](auto& spending, auto&& visit) {
    visit("step", spending.step);
    visit("hours", spending.hours);
    visit("money", spending.money);
  });
}

/// Runs through every column of an entry, those that all tables share included.
template <class Entry, class Fields, class Visit>
void for_each_column(Entry& entry, const Fields& fields, const Visit& visit) {
  visit("number", entry.number);
  visit("when_utc", entry.when_utc);
  fields(entry, visit);
  visit("by_name", entry.by);
  visit("note", entry.note);
}

template <class Entry, class Fields>
std::vector<Entry> read_table(SQLite::Database& db, const char* table, const Fields& fields) {
  std::string columns;
  const Entry none;
  for_each_column(none, fields, [&](const char* column, const auto& member) {
    constexpr bool heavy = std::is_same_v<std::decay_t<decltype(member)>, Bytes>;
    columns += fmt::format("{}{}", columns.empty() ? "" : ", ", heavy ? "NULL" : column);
  });
  std::vector<Entry> entries;
  SQLite::Statement query(db, fmt::format("SELECT {} FROM {} ORDER BY number", columns, table));
  while (query.executeStep()) {
    Entry& entry = entries.emplace_back();
    int place = 0;
    for_each_column(entry, fields, [&](const char*, auto& member) { take(query.getColumn(place++), member); });
  }
  return entries;
}

template <class Entry, class Fields>
void append_to_table(SQLite::Database& db, const char* table, std::vector<Entry>& entries,
                     const Fields& fields) {
  if (entries.empty()) return;
  const std::int64_t last =
      db.execAndGet(fmt::format("SELECT coalesce(max(number), 0) FROM {}", table)).getInt64();
  std::string columns;
  std::string marks;
  for_each_column(entries.front(), fields, [&](const char* column, const auto&) {
    columns += fmt::format("{}{}", columns.empty() ? "" : ", ", column);
    marks += marks.empty() ? "?" : ", ?";
  });
  SQLite::Statement insert(db, fmt::format("INSERT INTO {} ({}) VALUES ({})", table, columns, marks));
  const std::string now = now_utc();
  long long number = last;
  for (Entry& entry : entries) {
    entry.number = ++number;
    entry.when_utc = now;
    int place = 0;
    for_each_column(entry, fields, [&](const char*, const auto& member) { put(insert, ++place, member); });
    insert.exec();
    insert.reset();
  }
  renew_seal(db, rows_mark(db, table, fmt::format("number > {}", last)));
}

}  // namespace

WorksLog read_works_log(SQLite::Database& db) {
  WorksLog log;
  for_each_record_table(log, [&](const char* table, auto& entries, const auto& fields) {
    using Entry = typename std::decay_t<decltype(entries)>::value_type;
    entries = read_table<Entry>(db, table, fields);
  });
  return log;
}

WorksLog append_to_works_log(SQLite::Database& db, const WorksLog& more) {
  WorksLog added = more;
  for_each_record_table(added, [&](const char* table, auto& entries, const auto& fields) {
    append_to_table(db, table, entries, fields);
  });
  for (Photograph& photograph : added.photographs) photograph.bytes.clear();
  return added;
}

void add_to(WorksLog& log, const WorksLog& more) {
  const auto append = [](auto& entries, const auto& others) {
    entries.insert(entries.end(), others.begin(), others.end());
  };
  append(log.loads, more.loads);
  append(log.measurements, more.measurements);
  append(log.decisions, more.decisions);
  append(log.shrink, more.shrink);
  append(log.photographs, more.photographs);
  append(log.spendings, more.spendings);
}

std::optional<std::string> read_photograph(SQLite::Database& db, long long number) {
  SQLite::Statement query(db, "SELECT bytes FROM photographs WHERE number = ?");
  query.bind(1, static_cast<std::int64_t>(number));
  if (!query.executeStep()) return std::nullopt;
  const SQLite::Column cell = query.getColumn(0);
  return std::string(static_cast<const char*>(cell.getBlob()), static_cast<std::size_t>(cell.getBytes()));
}

}  // namespace prismwright
