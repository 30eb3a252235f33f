#pragma once

#include <optional>
#include <string>

#include "core/book/changeset.h"
#include "core/book/sqlite_api.h"

namespace prismwright {

/// The undo and redo steps of a book. Steps that are done come first, those taken back follow them; a new step
/// drops the ones taken back. All functions that write keep the content seal and want the caller's transaction.

struct StepTexts {
  std::optional<std::string> undo;  ///< what undo would take back
  std::optional<std::string> redo;  ///< what redo would bring again
};
StepTexts step_texts(SQLite::Database& db);

/// Adds a step that has just been done.
void add_step(SQLite::Database& db, const std::string& what, const Changeset& changes);

/// Takes the last done step back, and answers its text; nothing when there is none.
std::optional<std::string> undo_step(SQLite::Database& db);
/// Does the first step again that was taken back, and answers its text; nothing when there is none.
std::optional<std::string> redo_step(SQLite::Database& db);

}  // namespace prismwright
