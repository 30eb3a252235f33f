#include "core/book/lensbook.h"

#include <fmt/format.h>

#include <memory>
#include <utility>

#include "core/book/book_header.h"
#include "core/book/book_lock.h"
#include "core/book/book_making.h"
#include "core/book/book_problems.h"
#include "core/book/book_reading.h"
#include "core/book/changeset.h"
#include "core/book/content_seal.h"
#include "core/book/ledger_table.h"
#include "core/book/schema.h"
#include "core/book/steps.h"
#include "core/book/value_tables.h"
#include "core/lens/quantities.h"

namespace prismwright {
namespace {

/// Opens a checked book for writing. A rollback journal, and none kept open: the book is one file between edits
/// and can be read on a medium that takes no writing, which a write-ahead log cannot. synchronous = EXTRA is
/// FULL and has the folder on disk too once the journal is gone, so that an edit that returned also outlives a
/// power cut.
std::unique_ptr<SQLite::Database> open_database(const BookName& book) {
  constexpr int kPatience_ms = 5000;  // for a second window that is just reading
  auto db = std::make_unique<SQLite::Database>(book.file, SQLite::OPEN_READWRITE, kPatience_ms);
  db->exec("PRAGMA journal_mode = DELETE");  // reads the book, so a journal left behind is rolled back here
  db->exec("PRAGMA synchronous = EXTRA");
  // A process killed before its first page was changed leaves a journal with nothing to roll back; writing the
  // version that the book has anyway makes SQLite clear it away.
  if (has_journal(book)) db->exec(fmt::format("PRAGMA user_version = {}", user_version(*db)));
  return db;
}

bool may_write(SQLite::Database& db) { return sqlite3_db_readonly(db.getHandle(), "main") == 0; }

bool was_moved(SQLite::Database& db) {
  int moved = 0;
  return sqlite3_file_control(db.getHandle(), "main", SQLITE_FCNTL_HAS_MOVED, &moved) == SQLITE_OK &&
         moved != 0;
}

std::string unwritable_reason(const BookName& book) {
  return fmt::format(
      "{} may not be written, so it is shown read-only. Change who may write it, or copy it to "
      "another folder to change it.",
      book.name);
}

Problem moved_problem(const BookName& book) {
  return file_problem(
      "moved", book.path,
      fmt::format("{} was moved or taken away while it was open, so it is not changed. Put it back "
                  "at {}, or open it where it lies now.",
                  book.name, book.path));
}

/// Why nothing can be made where the book is to stand.
Problem unmakable(const BookName& book, const Problem& why) {
  if (why.code == "open_elsewhere") {
    return file_problem(
        "open_elsewhere", book.path,
        fmt::format("{} is there already and open in another window. Choose another name; no book is "
                    "overwritten.",
                    book.name));
  }
  return file_problem(
      "not_writable", book.path,
      fmt::format("{} cannot be made: its folder does not exist or cannot be written. Choose another "
                  "folder.",
                  book.path));
}

/// Writes new values as one step; answers false when every value is what it was.
bool write_edit(SQLite::Database& db, const LensValues& values, const std::string& what) {
  const SealMark before = values_mark(db);
  ChangeRecorder recorder(db);
  update_values(db, values);
  const Changeset changes = recorder.take();
  if (changes.empty()) return false;
  renew_seal(db, before ^ values_mark(db));
  add_step(db, what, changes);
  return true;
}

}  // namespace

struct Lensbook::Inside {
  Inside(BookName its_book, BookContents its_contents)
      : book(std::move(its_book)), contents(std::move(its_contents)) {}

  /// Migrates the book if it is older and opens it for writing; what stands in the way makes it read-only.
  void open_for_writing(BookLock its_lock);
  /// Runs an act that writes, as one transaction; `act` answers false to leave everything as it was.
  template <class Act>
  Done change(Act&& act);
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

void Lensbook::Inside::open_for_writing(BookLock its_lock) {
  lock = std::move(its_lock);
  const Done opened = guarded<Done>(book, "opened for writing", [&] { return migrate_and_open(); });
  if (opened) return;
  read_only_reason = opened.problem().text;
  db.reset();
  lock.reset();
}

Done Lensbook::Inside::migrate_and_open() {
  db = open_database(book);
  if (!may_write(*db)) return file_problem("not_writable", book.path, unwritable_reason(book));
  if (contents.version == kBookVersion) return {};
  db.reset();
  Outcome<std::string> note = migrate_book(book, contents.version);
  if (!note) return note.problem();
  migration_note = *note;
  contents.version = kBookVersion;
  db = open_database(book);
  return {};
}

template <class Act>
Done Lensbook::Inside::change(Act&& act) {
  if (!db) return file_problem("read_only", book.path, read_only_reason);
  if (was_moved(*db)) return moved_problem(book);
  Done done = guarded<Done>(book, "changed", [&]() -> Done {
    SQLite::Transaction whole(*db, SQLite::TransactionBehavior::IMMEDIATE);
    if (act(*db)) whole.commit();
    return {};
  });
  if (!done) follow_file();
  return done;
}

/// After a failed write: normally nothing changed, but a disk may fail after the point of no return.
void Lensbook::Inside::follow_file() noexcept {
  try {
    contents = contents_of(*db);
  } catch (const std::exception&) {
    // The disk does not even read any more: what was last known stays, and the next edit is refused again.
  }
}

Outcome<std::string> Lensbook::Inside::move(std::optional<std::string> (*one_step)(SQLite::Database&),
                                            const char* nothing) {
  std::optional<std::string> text;
  LensValues moved;
  StepTexts steps;
  Done done = change([&](SQLite::Database& open) {
    text = one_step(open);
    moved = read_values(open);
    steps = step_texts(open);
    return text.has_value();
  });
  if (!done) return done.problem();
  if (!text) return request_problem("no_step", "", nothing);
  contents.values = std::move(moved);
  contents.steps = std::move(steps);
  return *text;
}

Lensbook::Lensbook(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
Lensbook::Lensbook(Lensbook&&) noexcept = default;
Lensbook& Lensbook::operator=(Lensbook&&) noexcept = default;
Lensbook::~Lensbook() = default;

Outcome<Lensbook> Lensbook::create(const std::string& path, const LensValues& values) {
  const BookName book(path);
  if (Done fit = check_values(values); !fit) return fit.problem();
  if (Done built = check_buildable(values); !built) return built.problem();
  {
    const Outcome<BookLock> lock = BookLock::take(book);
    if (!lock) return unmakable(book, lock.problem());
    if (Done made = make_book(book, values); !made) return made.problem();
  }
  return open(path);
}

Outcome<Lensbook> Lensbook::open(const std::string& path, Access access) {
  const BookName book(path);
  if (Done there = check_there(book); !there) return there.problem();
  if (Done good = check_header(book); !good && !has_journal(book)) return good.problem();
  std::optional<BookLock> lock;
  std::string reason =
      fmt::format("{} was opened to be read only. Open it for writing to change it.", book.name);
  if (access == Access::read_write) {
    Outcome<BookLock> taken = BookLock::take(book);
    if (taken)
      lock = std::move(taken).value();
    else
      reason = taken.problem().text;
  }
  Outcome<BookContents> contents = read_book(book);
  if (!contents) return contents.problem();
  auto inside = std::make_unique<Inside>(book, std::move(contents).value());
  if (lock)
    inside->open_for_writing(std::move(*lock));
  else
    inside->read_only_reason = std::move(reason);
  return Lensbook(std::move(inside));
}

const std::string& Lensbook::path() const { return inside_->book.path; }
bool Lensbook::read_only() const { return inside_->db == nullptr; }
const std::string& Lensbook::read_only_reason() const { return inside_->read_only_reason; }
const std::string& Lensbook::migration_note() const { return inside_->migration_note; }
const LensValues& Lensbook::values() const { return inside_->contents.values; }
const std::vector<LedgerEntry>& Lensbook::ledger() const { return inside_->contents.ledger; }
std::optional<std::string> Lensbook::undo_text() const { return inside_->contents.steps.undo; }
std::optional<std::string> Lensbook::redo_text() const { return inside_->contents.steps.redo; }

Done Lensbook::edit(const LensValues& values, const std::string& what) {
  if (Done fit = check_values(values); !fit) return fit;
  bool changed = false;
  Done done = inside_->change([&](SQLite::Database& db) {
    changed = write_edit(db, values, what);
    return changed;
  });
  if (!done || !changed) return done;
  inside_->contents.values = values;
  inside_->contents.steps = {what, std::nullopt};
  return {};
}

Outcome<std::string> Lensbook::undo() { return inside_->move(undo_step, "There is no step to take back."); }

Outcome<std::string> Lensbook::redo() { return inside_->move(redo_step, "There is no step to do again."); }

Done Lensbook::record(std::span<const LedgerEntry> entries) {
  std::vector<LedgerEntry> lines;
  Done done = inside_->change([&](SQLite::Database& db) {
    lines = append_to_ledger(db, entries);
    return !lines.empty();
  });
  if (!done) return done;
  std::vector<LedgerEntry>& ledger = inside_->contents.ledger;
  ledger.insert(ledger.end(), lines.begin(), lines.end());
  return {};
}

}  // namespace prismwright
