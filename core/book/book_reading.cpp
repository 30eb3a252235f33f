#include "core/book/book_reading.h"

#include <SQLiteCpp/Backup.h>
#include <fmt/format.h>
#include <stdlib.h>

#include <cerrno>
#include <filesystem>

#include "core/book/bench_table.h"
#include "core/book/book_header.h"
#include "core/book/content_seal.h"
#include "core/book/ledger_table.h"
#include "core/book/safe_files.h"
#include "core/book/schema.h"
#include "core/book/value_cells.h"
#include "core/book/value_tables.h"
#include "core/book/variant_table.h"
#include "core/book/works_tables.h"
#include "core/lens/quantities.h"

namespace prismwright {
namespace {

constexpr int kPatience_ms = 5000;  ///< how long to wait for another window's edit to be on disk

/// A folder for passing files that goes away with everything in it.
class PassingFolder {
 public:
  PassingFolder() {
    std::string name = (std::filesystem::temp_directory_path() / "prismwright-XXXXXX").string();
    if (::mkdtemp(name.data()) == nullptr) throw std::system_error(errno, std::generic_category(), name);
    path_ = name;
  }
  ~PassingFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  PassingFolder(const PassingFolder&) = delete;
  PassingFolder& operator=(const PassingFolder&) = delete;
  [[nodiscard]] const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

void check_integrity(SQLite::Database& db) {
  SQLite::Statement check(db, "PRAGMA integrity_check(1)");
  while (check.executeStep()) {
    const std::string answer = check.getColumn(0).getString();
    if (answer != "ok") throw BookDamage("a page does not hold together");
  }
}

void check_database(SQLite::Database& db, int version) {
  if (!schema_fits(db, version)) throw BookDamage("its tables are not those of a lensbook");
  check_integrity(db);
  if (!seal_fits(db, version)) throw BookDamage("its contents were altered outside Prismwright");
}

Problem unfit_values(const BookName& book, const Problem& why) {
  return file_problem(
      "unfit_values", book.path,
      fmt::format("{} holds a value that no lens can have and was left as it is: {}", book.name, why.text));
}

BookContents migrated_in_memory(SQLite::Database& db) {
  SQLite::Database copy(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
  SQLite::Backup(copy, db).executeStep();
  migrate_schema(copy);
  return contents_of(copy);
}

Outcome<BookContents> read_whole(const BookName& book, const std::string& path) {
  SQLite::Database db(path, SQLite::OPEN_READONLY, kPatience_ms);
  db.exec("PRAGMA trusted_schema = OFF");
  db.exec("BEGIN");  // one moment for everything read; ends with the connection
  const int version = user_version(db);
  if (version < 1 || version > kBookVersion) throw BookDamage("it states no version");
  check_database(db, version);
  BookContents contents = version < kBookVersion ? migrated_in_memory(db) : contents_of(db);
  contents.version = version;
  if (const Done fit = check_values(contents.values); !fit) return unfit_values(book, fit.problem());
  return contents;
}

/// Rolls the journal beside a copy back; answers whether that gives the beginning of a lensbook.
bool rolled_back(const BookName& copy) {
  try {
    SQLite::Database db(copy.file, SQLite::OPEN_READWRITE, kPatience_ms);
    user_version(db);  // the first reading rolls back
  } catch (const SQLite::Exception& error) {
    if ((error.getErrorCode() & 0xFF) != SQLITE_NOTADB) throw;
    return false;
  }
  return check_header(copy).ok();
}

/// Rolls the journal back on a copy and reads that.
Outcome<BookContents> read_recovered(const BookName& book) {
  const PassingFolder folder;
  const BookName copy((folder.path() / "copy.lensbook").string());
  copy_to_disk(book.file, copy.file);
  copy_to_disk(book.file + "-journal", copy.file + "-journal");
  if (!rolled_back(copy)) {
    const Done as_it_was = check_header(book);
    return as_it_was ? damaged_problem(book, "the edit it was left in cannot be undone") : as_it_was.problem();
  }
  return read_whole(book, copy.file);
}

bool needs_recovery(const SQLite::Exception& error) {
  return error.getErrorCode() == SQLITE_READONLY_ROLLBACK ||
         error.getExtendedErrorCode() == SQLITE_READONLY_ROLLBACK;
}

}  // namespace

BookContents contents_of(SQLite::Database& db) {
  BookContents contents;
  contents.version = user_version(db);
  contents.values = read_values(db);
  contents.variants = read_variants(db);
  contents.ledger = read_ledger(db);
  contents.last_serial = highest_serial(contents.ledger);
  contents.readings = read_readings(db);
  contents.works_log = read_works_log(db);
  contents.steps = step_texts(db);
  return contents;
}

Outcome<BookContents> read_book(const BookName& book) {
  if (Done there = check_there(book); !there) return there.problem();
  return guarded<Outcome<BookContents>>(book, "read", [&]() -> Outcome<BookContents> {
    if (Done good = check_header(book); !good) {
      if (has_journal(book)) return read_recovered(book);
      return good.problem();
    }
    try {
      return read_whole(book, book.file);
    } catch (const SQLite::Exception& error) {
      if (!needs_recovery(error)) throw;
    }
    return read_recovered(book);
  });
}

}  // namespace prismwright
