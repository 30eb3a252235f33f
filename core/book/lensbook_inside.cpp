#include "core/book/lensbook_inside.h"

#include <fmt/format.h>

#include "core/book/book_header.h"
#include "core/book/book_making.h"
#include "core/book/changeset.h"
#include "core/book/content_seal.h"
#include "core/book/schema.h"
#include "core/book/steps.h"
#include "core/book/value_tables.h"
#include "core/book/variant_table.h"

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

/// What `write` does to the value tables as one step; answers false when every value is what it was.
bool write_step(SQLite::Database& db, const std::string& what,
                const std::function<void(SQLite::Database&)>& write) {
  const SealMark before = values_mark(db);
  ChangeRecorder recorder(db);
  write(db);
  const Changeset changes = recorder.take();
  if (changes.empty()) return false;
  renew_seal(db, before ^ values_mark(db));
  add_step(db, what, changes);
  return true;
}

}  // namespace

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

Done Lensbook::Inside::change(const std::function<bool(SQLite::Database&)>& act) {
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

Outcome<bool> Lensbook::Inside::step(const std::string& what,
                                     const std::function<void(SQLite::Database&)>& write) {
  bool changed = false;
  const Done done = change([&](SQLite::Database& open) {
    changed = write_step(open, what, write);
    return changed;
  });
  if (!done) return done.problem();
  if (changed) contents.steps = {what, std::nullopt};
  return changed;
}

Done Lensbook::Inside::variant_step(const std::string& what,
                                    const std::function<void(SQLite::Database&)>& write) {
  std::vector<SectionVariant> variants;
  const Outcome<bool> changed = step(what, [&](SQLite::Database& open) {
    write(open);
    variants = read_variants(open);
  });
  if (!changed) return changed.problem();
  contents.variants = std::move(variants);
  return {};
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
  LensValues values;
  std::vector<SectionVariant> variants;
  StepTexts steps;
  Done done = change([&](SQLite::Database& open) {
    text = one_step(open);
    values = read_values(open);
    variants = read_variants(open);
    steps = step_texts(open);
    return text.has_value();
  });
  if (!done) return done.problem();
  if (!text) return request_problem("no_step", "", nothing);
  contents.values = std::move(values);
  contents.variants = std::move(variants);
  contents.steps = std::move(steps);
  return *text;
}

}  // namespace prismwright
