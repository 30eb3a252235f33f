#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>

#include "core/book/sqlite_api.h"
#include "core/book/value_cells.h"

namespace prismwright {

/// Walks the rows of a long table. Beside SQLite::Statement it makes no object for each cell, which tells where
/// every cell of a hundred thousand lines is read at each opening. Cells count from 0.
class RowCursor {
 public:
  RowCursor(SQLite::Database& db, const std::string& sql) : db_(db) {
    sqlite3_stmt* rows = nullptr;
    const int code = sqlite3_prepare_v2(db.getHandle(), sql.c_str(), -1, &rows, nullptr);
    rows_.reset(rows);
    if (code != SQLITE_OK) throw SQLite::Exception(db.getHandle(), code);
  }

  /// To the next row; false after the last.
  bool step() {
    const int code = sqlite3_step(rows_.get());
    if (code != SQLITE_ROW && code != SQLITE_DONE) throw SQLite::Exception(db_.getHandle(), code);
    return code == SQLITE_ROW;
  }
  [[nodiscard]] int cells() const { return sqlite3_column_count(rows_.get()); }
  [[nodiscard]] int type(int cell) const { return sqlite3_column_type(rows_.get(), cell); }
  [[nodiscard]] bool empty(int cell) const { return type(cell) == SQLITE_NULL; }
  [[nodiscard]] double real(int cell) const { return sqlite3_column_double(rows_.get(), cell); }
  [[nodiscard]] std::int64_t integer(int cell) const { return sqlite3_column_int64(rows_.get(), cell); }
  /// Bytes of a text or blob, there until the next step.
  [[nodiscard]] std::string_view bytes(int cell) const {
    const auto* bytes = static_cast<const char*>(sqlite3_column_blob(rows_.get(), cell));
    const auto size = static_cast<std::size_t>(sqlite3_column_bytes(rows_.get(), cell));
    return bytes == nullptr ? std::string_view() : std::string_view(bytes, size);
  }

  // The same for cells that must be of that type; they throw BookDamage where a cell is not.
  [[nodiscard]] std::string_view text(int cell) const { return wanted(cell, SQLITE_TEXT), bytes(cell); }
  [[nodiscard]] long long number(int cell) const { return wanted(cell, SQLITE_INTEGER), integer(cell); }

 private:
  void wanted(int cell, int its_type) const {
    if (type(cell) != its_type)
      throw BookDamage(std::string("an unreadable value in column ") + sqlite3_column_name(rows_.get(), cell));
  }
  struct Finalize {
    void operator()(sqlite3_stmt* rows) const { sqlite3_finalize(rows); }
  };

  SQLite::Database& db_;
  std::unique_ptr<sqlite3_stmt, Finalize> rows_;
};

}  // namespace prismwright
