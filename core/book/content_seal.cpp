#include "core/book/content_seal.h"

#include <fmt/format.h>

#include <bit>
#include <cstddef>
#include <string_view>

#include "core/book/schema.h"
#include "core/book/value_cells.h"

namespace prismwright {
namespace {

/// Fowler, Noll and Vo's 64-bit hash, variant 1a (public domain; basis and prime as its authors publish them,
/// from memory).
class RowHash {
 public:
  void add(std::string_view bytes) {
    for (const char byte : bytes) value_ = (value_ ^ static_cast<unsigned char>(byte)) * 0x100000001B3ULL;
  }
  void add(std::uint64_t number) {
    for (int shift = 0; shift < 64; shift += 8) {
      const char byte = static_cast<char>((number >> shift) & 0xFF);
      add(std::string_view(&byte, 1));
    }
  }
  [[nodiscard]] SealMark value() const { return value_; }

 private:
  SealMark value_ = 0xCBF29CE484222325ULL;
};

void add_cell(RowHash& hash, const SQLite::Column& cell) {
  const int type = cell.getType();
  hash.add(static_cast<std::uint64_t>(type));
  if (type == SQLITE_INTEGER) {
    hash.add(static_cast<std::uint64_t>(cell.getInt64()));
  } else if (type == SQLITE_FLOAT) {
    hash.add(std::bit_cast<std::uint64_t>(cell.getDouble()));
  } else if (type != SQLITE_NULL) {
    const auto* bytes = static_cast<const char*>(cell.getBlob());
    const auto size = static_cast<std::size_t>(cell.getBytes());
    hash.add(static_cast<std::uint64_t>(size));  // so that bytes cannot move from one cell to the next
    if (bytes != nullptr) hash.add(std::string_view(bytes, size));
  }
}

SealMark all_rows_mark(SQLite::Database& db) {
  SealMark mark = values_mark(db) ^ rows_mark(db, "step") ^ rows_mark(db, "ledger");
  for (const char* table : kGrowingTables) {
    // A book of an older version has not all of them.
    if (db.tableExists(table)) mark ^= rows_mark(db, table);
  }
  return mark;
}

}  // namespace

SealMark rows_mark(SQLite::Database& db, const std::string& table, const std::string& where) {
  SQLite::Statement query(db,
                          fmt::format("SELECT * FROM {}{}{}", table, where.empty() ? "" : " WHERE ", where));
  SealMark mark = 0;
  while (query.executeStep()) {
    RowHash hash;
    hash.add(table);
    for (int place = 0; place < query.getColumnCount(); ++place) add_cell(hash, query.getColumn(place));
    mark ^= hash.value();
  }
  return mark;
}

SealMark values_mark(SQLite::Database& db) {
  SealMark mark = 0;
  for (const char* table : kValueTables) {
    // A book of an older version has not all of them.
    if (db.tableExists(table)) mark ^= rows_mark(db, table);
  }
  return mark;
}

void renew_seal(SQLite::Database& db, SealMark change) {
  const auto stored = static_cast<SealMark>(db.execAndGet("SELECT content FROM seal").getInt64());
  SQLite::Statement update(db, "UPDATE seal SET content = ? WHERE id = 1");
  update.bind(1, static_cast<std::int64_t>(stored ^ change));
  update.exec();
}

void make_seal(SQLite::Database& db) {
  SQLite::Statement write(db, "INSERT OR REPLACE INTO seal (id, content) VALUES (1, ?)");
  write.bind(1, static_cast<std::int64_t>(all_rows_mark(db)));
  write.exec();
}

bool seal_fits(SQLite::Database& db) {
  SQLite::Statement query(db, "SELECT content FROM seal WHERE id = 1");
  return query.executeStep() && static_cast<SealMark>(query.getColumn(0).getInt64()) == all_rows_mark(db);
}

}  // namespace prismwright
