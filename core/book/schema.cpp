#include "core/book/schema.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

#include "core/book/migrations.h"
#include "core/book/word_hash.h"

namespace prismwright {
namespace {

// A quantity key is table.column (section.edge_mm), units in the column's name; what a column means stands in
// the table of quantities (core/lens/quantities.h). Choices and stages are kept as their names, blanks as NULL.
//
// The first version is frozen: a change of the schema is a new entry of kMigrations. A new book is made by the
// same steps, so a migrated book and a new one have the same schema to the letter.
constexpr const char* kFirstVersion = R"sql(
CREATE TABLE brief (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  title TEXT NOT NULL,
  client TEXT NOT NULL,
  "order" TEXT NOT NULL,
  focal_mm REAL NOT NULL,
  work TEXT NOT NULL,
  character TEXT NOT NULL,
  notes TEXT NOT NULL);
CREATE TABLE material (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  name TEXT NOT NULL,
  "index" REAL,
  density_g_cm3 REAL NOT NULL);
CREATE TABLE section (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  faces TEXT NOT NULL,
  joint TEXT NOT NULL,
  edge_mm REAL NOT NULL,
  ring_growth_mm REAL NOT NULL,
  land_mm REAL NOT NULL,
  gap_mm REAL NOT NULL,
  refracting_to_deg REAL NOT NULL,
  refracting_margins_mm TEXT NOT NULL,
  upper_to_deg REAL NOT NULL,
  lower_to_deg REAL NOT NULL,
  reflecting_chord_mm REAL NOT NULL,
  upper_start_r_mm REAL,
  upper_start_z_mm REAL);
CREATE TABLE frame (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  rib_mm REAL NOT NULL,
  pocket_mm REAL NOT NULL,
  setting_gap_mm REAL NOT NULL,
  end_gap_mm REAL NOT NULL,
  rib_margin_mm REAL NOT NULL,
  ring_mm REAL NOT NULL);
CREATE TABLE panel (
  number INTEGER PRIMARY KEY CHECK (number >= 1),
  width_deg REAL NOT NULL,
  axis_shift_deg REAL NOT NULL,
  blind INTEGER NOT NULL CHECK (blind IN (0, 1)));
CREATE TABLE step (
  number INTEGER PRIMARY KEY CHECK (number >= 1),
  when_utc TEXT NOT NULL,
  what TEXT NOT NULL,
  changeset BLOB NOT NULL,
  undone INTEGER NOT NULL DEFAULT 0 CHECK (undone IN (0, 1)));
CREATE TABLE ledger (
  number INTEGER PRIMARY KEY CHECK (number >= 1),
  when_utc TEXT NOT NULL,
  mark TEXT NOT NULL,
  from_stage TEXT NOT NULL,
  to_stage TEXT NOT NULL,
  by_name TEXT NOT NULL,
  note TEXT NOT NULL);
CREATE TABLE seal (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  content INTEGER NOT NULL);
CREATE TRIGGER ledger_keeps_its_lines BEFORE UPDATE ON ledger
  BEGIN SELECT RAISE(ABORT, 'a line of the ledger is never changed: add a new one'); END;
CREATE TRIGGER ledger_loses_no_line BEFORE DELETE ON ledger
  BEGIN SELECT RAISE(ABORT, 'a line of the ledger is never taken out: add a new one'); END;
CREATE TRIGGER ledger_replaces_no_line BEFORE INSERT ON ledger
  WHEN EXISTS (SELECT 1 FROM ledger WHERE number = NEW.number)
  BEGIN SELECT RAISE(ABORT, 'a line of the ledger is never replaced: add a new one'); END;
)sql";

// schema_mark of each version's tables, so that no opening has to make them anew; a test does.
constexpr std::array<std::uint64_t, kBookVersion> kSchemaMarks = {
    0x0C99AAAEEA5F6B6BULL, 0x2955F4FB9B94AAD1ULL, 0xCDA626F7AA57FE94ULL, 0x46790A3BF72C77B8ULL,
    0xCF56B9D0B6B8C952ULL, 0x570601CD25C2D57CULL, 0xB05199EE4C937E33ULL};

void set_version(SQLite::Database& db, int version) {
  db.exec(fmt::format("PRAGMA user_version = {}", version));
}

void migrate_to(SQLite::Database& db, int version) {
  for (int next = user_version(db) + 1; next <= version; ++next) {
    db.exec(kMigrations.at(static_cast<std::size_t>(next) - 2));
    set_version(db, next);
  }
}

std::string without_white_space(std::string text) {
  std::erase_if(text, [](unsigned char letter) { return std::isspace(letter) != 0; });
  return text;
}

}  // namespace

void make_schema(SQLite::Database& db, int version) {
  db.exec(fmt::format("PRAGMA application_id = {}", kApplicationId));
  db.exec(kFirstVersion);
  set_version(db, 1);
  migrate_to(db, version);
}

void migrate_schema(SQLite::Database& db) { migrate_to(db, kBookVersion); }

std::vector<std::string> schema_of(SQLite::Database& db) {
  std::vector<std::string> objects;
  SQLite::Statement query(db, "SELECT type || ' ' || name || ' ' || tbl_name || ' ' || sql FROM sqlite_schema");
  while (query.executeStep()) objects.push_back(without_white_space(query.getColumn(0).getString()));
  std::sort(objects.begin(), objects.end());
  return objects;
}

std::vector<std::string> expected_schema(int version) {
  SQLite::Database reference(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
  make_schema(reference, version);
  return schema_of(reference);
}

std::uint64_t schema_mark(const std::vector<std::string>& schema) {
  WordHash hash;
  for (const std::string& object : schema) {
    hash.add(static_cast<std::uint64_t>(object.size()));
    hash.add(object);
  }
  return hash.value();
}

bool schema_fits(SQLite::Database& db, int version) {
  return schema_mark(schema_of(db)) == kSchemaMarks.at(static_cast<std::size_t>(version) - 1);
}

int user_version(SQLite::Database& db) { return db.execAndGet("PRAGMA user_version").getInt(); }

}  // namespace prismwright
