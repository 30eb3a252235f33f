#pragma once

#include <memory>
#include <string>

#include "core/book/sqlite_api.h"

namespace prismwright {

/// What happened to the value tables between two moments, as SQLite's session extension writes it down.
using Changeset = std::string;

/// Records every change to the value tables from its making on.
class ChangeRecorder {
 public:
  explicit ChangeRecorder(SQLite::Database& db);
  /// All changes so far; empty when every value is what it was.
  [[nodiscard]] Changeset take();

 private:
  struct Delete {
    void operator()(sqlite3_session* session) const { sqlite3session_delete(session); }
  };
  std::unique_ptr<sqlite3_session, Delete> session_;
};

/// The changeset that takes back the given one.
Changeset inverted(const Changeset& changes);

/// Applies a changeset to the value tables, inside the caller's transaction. Throws BookDamage when the rows
/// are not as the changeset found them, which an unaltered book rules out.
void apply_changes(SQLite::Database& db, const Changeset& changes);

}  // namespace prismwright
