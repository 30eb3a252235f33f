#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <utility>

#include "core/book/book_lock.h"
#include "core/book/book_problems.h"
#include "core/book/book_reading.h"
#include "core/book/lensbook.h"
#include "core/book/sqlite_api.h"

namespace prismwright {

/// What a Lensbook keeps: the contents as they were read or last written, and the open file behind them.
struct Lensbook::Inside {
  Inside(BookName its_book, BookContents its_contents)
      : book(std::move(its_book)), contents(std::move(its_contents)) {}

  /// Migrates the book if it is older and opens it for writing; what stands in the way makes it read-only.
  void open_for_writing(BookLock its_lock);
  /// Runs an act that writes, as one transaction; `act` answers false to leave everything as it was.
  Done change(const std::function<bool(SQLite::Database&)>& act);
  /// Writes to the value tables as one step for undo, named `what`; answers whether anything is not what it
  /// was.
  Outcome<bool> step(const std::string& what, const std::function<void(SQLite::Database&)>& write);
  /// The same for the variants, which are read anew from the file.
  Done variant_step(const std::string& what, const std::function<void(SQLite::Database&)>& write);
  /// Undo or redo.
  Outcome<std::string> move(std::optional<std::string> (*one_step)(SQLite::Database&), const char* nothing);

  BookName book;
  BookContents contents;
  std::optional<BookLock> lock;          ///< outlives the database
  std::unique_ptr<SQLite::Database> db;  ///< null: read-only, and the file is not kept open
  std::string read_only_reason;
  std::string migration_note;

 private:
  Done migrate_and_open();
  void follow_file() noexcept;
};

}  // namespace prismwright
