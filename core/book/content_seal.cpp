#include "core/book/content_seal.h"

#include <fmt/format.h>

#include <array>
#include <bit>
#include <cstddef>
#include <string_view>

#include "core/book/row_cursor.h"
#include "core/book/schema.h"
#include "core/book/word_hash.h"

namespace prismwright {
namespace {

/// Fowler, Noll and Vo's 64-bit hash, variant 1a (public domain; basis and prime as its authors publish them,
/// from memory). What books up to version 6 are sealed with.
class ByteHash {
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

template <class Hash>
void add_cell(Hash& hash, const RowCursor& row, int cell) {
  const int type = row.type(cell);
  hash.add(static_cast<std::uint64_t>(type));
  if (type == SQLITE_INTEGER) {
    hash.add(static_cast<std::uint64_t>(row.integer(cell)));
  } else if (type == SQLITE_FLOAT) {
    hash.add(std::bit_cast<std::uint64_t>(row.real(cell)));
  } else if (type != SQLITE_NULL) {
    const std::string_view bytes = row.bytes(cell);
    hash.add(static_cast<std::uint64_t>(bytes.size()));  // so that bytes cannot move from one cell to the next
    hash.add(bytes);
  }
}

template <class Hash>
SealMark marks_of(SQLite::Database& db, const std::string& table, const std::string& where) {
  RowCursor rows(db, fmt::format("SELECT * FROM {}{}{}", table, where.empty() ? "" : " WHERE ", where));
  SealMark mark = 0;
  while (rows.step()) {
    Hash hash;
    hash.add(table);
    for (int cell = 0; cell < rows.cells(); ++cell) add_cell(hash, rows, cell);
    mark ^= hash.value();
  }
  return mark;
}

constexpr int kLastBytewise = 6;  ///< the last version of the book that is sealed byte by byte

SealMark rows_mark_in(SQLite::Database& db, int version, const std::string& table) {
  return version <= kLastBytewise ? marks_of<ByteHash>(db, table, "") : marks_of<WordHash>(db, table, "");
}

/// Tables that a book of an older version has not are left out.
template <class Tables>
SealMark tables_mark(SQLite::Database& db, int version, const Tables& tables) {
  SealMark mark = 0;
  for (const char* table : tables)
    if (db.tableExists(table)) mark ^= rows_mark_in(db, version, table);
  return mark;
}

SealMark all_rows_mark(SQLite::Database& db, int version) {
  constexpr std::array kOthers = {"step", "ledger"};
  return tables_mark(db, version, kValueTables) ^ tables_mark(db, version, kOthers) ^
         tables_mark(db, version, kGrowingTables);
}

}  // namespace

SealMark rows_mark(SQLite::Database& db, const std::string& table, const std::string& where) {
  return marks_of<WordHash>(db, table, where);
}

SealMark values_mark(SQLite::Database& db) { return tables_mark(db, kBookVersion, kValueTables); }

void renew_seal(SQLite::Database& db, SealMark change) {
  const auto stored = static_cast<SealMark>(db.execAndGet("SELECT content FROM seal").getInt64());
  SQLite::Statement update(db, "UPDATE seal SET content = ? WHERE id = 1");
  update.bind(1, static_cast<std::int64_t>(stored ^ change));
  update.exec();
}

void make_seal(SQLite::Database& db) {
  SQLite::Statement write(db, "INSERT OR REPLACE INTO seal (id, content) VALUES (1, ?)");
  write.bind(1, static_cast<std::int64_t>(all_rows_mark(db, kBookVersion)));
  write.exec();
}

bool seal_fits(SQLite::Database& db, int version) {
  SQLite::Statement query(db, "SELECT content FROM seal WHERE id = 1");
  return query.executeStep() &&
         static_cast<SealMark>(query.getColumn(0).getInt64()) == all_rows_mark(db, version);
}

}  // namespace prismwright
