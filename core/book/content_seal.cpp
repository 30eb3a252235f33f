#include "core/book/content_seal.h"

#include <fmt/format.h>

#include <array>
#include <bit>
#include <cstddef>
#include <cstring>
#include <string_view>

#include "core/book/schema.h"
#include "core/book/value_cells.h"

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

/// Takes eight bytes at a time. Every step can be turned back (exclusive or, an odd factor, a shift folded onto
/// itself), so two rows that differ in one word alone never have the same mark. The factor is the golden
/// section of 2^64 made odd.
class WordHash {
 public:
  void add(std::uint64_t word) {
    value_ = (value_ ^ word) * 0x9E3779B97F4A7C15ULL;
    value_ ^= value_ >> 32;
  }
  void add(std::string_view bytes) {
    while (bytes.size() >= sizeof(std::uint64_t)) {
      add(word_of_bytes(bytes.substr(0, sizeof(std::uint64_t))));
      bytes.remove_prefix(sizeof(std::uint64_t));
    }
    if (!bytes.empty()) add(word_of_bytes(bytes));  // its length goes in before it
  }
  [[nodiscard]] SealMark value() const { return value_; }

 private:
  /// The first byte lowest on every machine, so that a book may move between them.
  static std::uint64_t word_of_bytes(std::string_view bytes) {
    std::uint64_t word = 0;
    std::memcpy(&word, bytes.data(), bytes.size());
    if constexpr (std::endian::native == std::endian::big) word = __builtin_bswap64(word);
    return word;
  }

  SealMark value_ = 0x243F6A8885A308D3ULL;  // the fraction of pi in binary: any number but nought would do
};

template <class Hash>
void add_cell(Hash& hash, const SQLite::Column& cell) {
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

template <class Hash>
SealMark marks_of(SQLite::Database& db, const std::string& table, const std::string& where) {
  SQLite::Statement query(db,
                          fmt::format("SELECT * FROM {}{}{}", table, where.empty() ? "" : " WHERE ", where));
  SealMark mark = 0;
  while (query.executeStep()) {
    Hash hash;
    hash.add(table);
    for (int place = 0; place < query.getColumnCount(); ++place) add_cell(hash, query.getColumn(place));
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
