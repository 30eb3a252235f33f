#include "core/book/changeset.h"

#include <algorithm>
#include <limits>
#include <string_view>

#include "core/book/schema.h"
#include "core/book/value_cells.h"

namespace prismwright {
namespace {

void check(SQLite::Database& db, int code) {
  if (code != SQLITE_OK) throw SQLite::Exception(db.getHandle(), code);
}

/// Takes over a buffer that SQLite has made.
Changeset owned(int size, void* buffer) {
  const std::unique_ptr<void, void (*)(void*)> guard(buffer, sqlite3_free);
  return buffer == nullptr ? Changeset()
                           : Changeset(static_cast<const char*>(buffer), static_cast<std::size_t>(size));
}

int size_of(const Changeset& changes) {
  if (changes.size() > static_cast<std::size_t>(std::numeric_limits<int>::max()))
    throw BookDamage("a step that is too long");
  return static_cast<int>(changes.size());
}

int is_value_table(void*, const char* table) {
  return std::any_of(kValueTables.begin(), kValueTables.end(),
                     [table](std::string_view each) { return each == table; });
}

int never_over_another_value(void*, int, sqlite3_changeset_iter*) { return SQLITE_CHANGESET_ABORT; }

}  // namespace

ChangeRecorder::ChangeRecorder(SQLite::Database& db) {
  sqlite3_session* session = nullptr;
  check(db, sqlite3session_create(db.getHandle(), "main", &session));
  session_.reset(session);
  for (const char* table : kValueTables) check(db, sqlite3session_attach(session, table));
}

Changeset ChangeRecorder::take() {
  int size = 0;
  void* buffer = nullptr;
  const int code = sqlite3session_changeset(session_.get(), &size, &buffer);
  Changeset changes = owned(size, buffer);
  if (code != SQLITE_OK) throw SQLite::Exception("the step could not be recorded", code);
  return changes;
}

Changeset inverted(const Changeset& changes) {
  int size = 0;
  void* buffer = nullptr;
  const int code = sqlite3changeset_invert(size_of(changes), changes.data(), &size, &buffer);
  Changeset inverse = owned(size, buffer);
  if (code != SQLITE_OK) throw BookDamage("a step that cannot be taken back");
  return inverse;
}

void apply_changes(SQLite::Database& db, const Changeset& changes) {
  // SQLite only reads the changeset, though its function takes a pointer that could write.
  auto* bytes = const_cast<char*>(changes.data());
  const int code = sqlite3changeset_apply(db.getHandle(), size_of(changes), bytes, is_value_table,
                                          never_over_another_value, nullptr);
  if (code == SQLITE_ABORT || code == SQLITE_CORRUPT) throw BookDamage("a step that does not fit the values");
  check(db, code);
}

}  // namespace prismwright
