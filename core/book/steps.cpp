#include "core/book/steps.h"

#include <fmt/format.h>

#include "core/book/content_seal.h"
#include "core/book/utc_clock.h"

namespace prismwright {
namespace {

constexpr const char* kLastDone = "undone = 0 ORDER BY number DESC LIMIT 1";
constexpr const char* kFirstTakenBack = "undone = 1 ORDER BY number LIMIT 1";

struct Step {
  long long number = 0;
  std::string what;
  Changeset changes;
};

std::optional<Step> find_step(SQLite::Database& db, const char* which) {
  SQLite::Statement query(db, fmt::format("SELECT number, what, changeset FROM step WHERE {}", which));
  if (!query.executeStep()) return std::nullopt;
  return Step{query.getColumn(0).getInt64(), query.getColumn(1).getString(), query.getColumn(2).getString()};
}

std::optional<std::string> text_of(SQLite::Database& db, const char* which) {
  SQLite::Statement query(db, fmt::format("SELECT what FROM step WHERE {}", which));
  if (!query.executeStep()) return std::nullopt;
  return query.getColumn(0).getString();
}

void mark_step(SQLite::Database& db, long long number, bool undone) {
  SQLite::Statement update(db, "UPDATE step SET undone = ? WHERE number = ?");
  update.bind(1, undone ? 1 : 0);
  update.bind(2, static_cast<std::int64_t>(number));
  update.exec();
}

std::optional<std::string> move_step(SQLite::Database& db, const char* which, bool undone) {
  const std::optional<Step> step = find_step(db, which);
  if (!step) return std::nullopt;
  const std::string its_row = fmt::format("number = {}", step->number);
  const SealMark before = values_mark(db) ^ rows_mark(db, "step", its_row);
  apply_changes(db, undone ? inverted(step->changes) : step->changes);
  mark_step(db, step->number, undone);
  renew_seal(db, before ^ values_mark(db) ^ rows_mark(db, "step", its_row));
  return step->what;
}

}  // namespace

StepTexts step_texts(SQLite::Database& db) { return {text_of(db, kLastDone), text_of(db, kFirstTakenBack)}; }

void add_step(SQLite::Database& db, const std::string& what, const Changeset& changes) {
  const SealMark dropped = rows_mark(db, "step", "undone = 1");
  db.exec("DELETE FROM step WHERE undone = 1");
  SQLite::Statement insert(db,
                           "INSERT INTO step (number, when_utc, what, changeset) "
                           "SELECT coalesce(max(number), 0) + 1, ?, ?, ? FROM step");
  insert.bind(1, now_utc());
  insert.bind(2, what);
  insert.bind(3, changes.data(), static_cast<int>(changes.size()));
  insert.exec();
  renew_seal(db, dropped ^ rows_mark(db, "step", fmt::format("number = {}", db.getLastInsertRowid())));
}

std::optional<std::string> undo_step(SQLite::Database& db) { return move_step(db, kLastDone, true); }
std::optional<std::string> redo_step(SQLite::Database& db) { return move_step(db, kFirstTakenBack, false); }

}  // namespace prismwright
