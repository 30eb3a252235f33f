#include "core/book/lensbook.h"

#include <fmt/format.h>

#include <algorithm>
#include <memory>
#include <utility>

#include "core/book/bench_table.h"
#include "core/book/book_header.h"
#include "core/book/book_making.h"
#include "core/book/ledger_table.h"
#include "core/book/lensbook_inside.h"
#include "core/book/steps.h"
#include "core/book/value_tables.h"
#include "core/book/works_tables.h"
#include "core/lens/quantities.h"
#include "core/works/log_checks.h"

namespace prismwright {
namespace {

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

}  // namespace

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
const std::vector<BenchReading>& Lensbook::readings() const { return inside_->contents.readings; }
std::optional<std::string> Lensbook::undo_text() const { return inside_->contents.steps.undo; }
std::optional<std::string> Lensbook::redo_text() const { return inside_->contents.steps.redo; }

Done Lensbook::edit(const LensValues& values, const std::string& what) {
  if (Done fit = check_values(values); !fit) return fit;
  const Outcome<bool> changed = inside_->step(what, [&](SQLite::Database& db) { update_values(db, values); });
  if (!changed) return changed.problem();
  inside_->contents.values = values;
  return {};
}

Outcome<std::string> Lensbook::undo() { return inside_->move(undo_step, "There is no step to take back."); }

Outcome<std::string> Lensbook::redo() { return inside_->move(redo_step, "There is no step to do again."); }

const WorksLog& Lensbook::works_log() const { return inside_->contents.works_log; }

Done Lensbook::record(std::span<const LedgerEntry> entries, const WorksLog& more) {
  if (Done fit = check_log(more); !fit) return fit;
  std::vector<LedgerEntry> lines(entries.begin(), entries.end());
  WorksLog added;
  Done done = inside_->change([&](SQLite::Database& db) {
    added = append_to_works_log(db, more);
    for (LedgerEntry& line : lines)
      if (line.load == kNewLoad) line.load = added.loads.empty() ? 0 : added.loads.front().number;
    lines = append_to_ledger(db, lines, inside_->contents.last_serial);
    return !lines.empty() || !added.empty();
  });
  if (!done) return done;
  std::vector<LedgerEntry>& ledger = inside_->contents.ledger;
  ledger.insert(ledger.end(), lines.begin(), lines.end());
  inside_->contents.last_serial = std::max(inside_->contents.last_serial, highest_serial(lines));
  add_to(inside_->contents.works_log, added);
  return {};
}

Outcome<std::string> Lensbook::photograph_bytes(long long number) const {
  std::optional<std::string> bytes;
  const Done read = guarded<Done>(inside_->book, "read", [&]() -> Done {
    if (inside_->db) {
      bytes = read_photograph(*inside_->db, number);
    } else {
      SQLite::Database db(inside_->book.file, SQLite::OPEN_READONLY);
      bytes = read_photograph(db, number);
    }
    return {};
  });
  if (!read) return read.problem();
  if (bytes) return *std::move(bytes);
  return request_problem(
      "unknown_photograph", std::to_string(number),
      fmt::format("Photograph {} is not in this book. Take a number from its list.", number));
}

Done Lensbook::record_readings(std::span<const BenchReading> readings) {
  std::vector<BenchReading> added;
  Done done = inside_->change([&](SQLite::Database& db) {
    added = append_readings(db, readings);
    return !added.empty();
  });
  if (!done) return done;
  std::vector<BenchReading>& all = inside_->contents.readings;
  all.insert(all.end(), added.begin(), added.end());
  return {};
}

}  // namespace prismwright
