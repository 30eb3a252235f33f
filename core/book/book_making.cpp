#include "core/book/book_making.h"

#include <fmt/format.h>

#include <filesystem>

#include "core/book/content_seal.h"
#include "core/book/safe_files.h"
#include "core/book/schema.h"
#include "core/book/value_tables.h"

namespace prismwright {
namespace {

void write_new(const std::string& path, const LensValues& values) {
  SQLite::Database db(path, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
  SQLite::Transaction whole(db);
  make_schema(db);
  insert_values(db, values);
  make_seal(db);
  whole.commit();
}

void migrate_copy(const std::string& path) {
  SQLite::Database db(path, SQLite::OPEN_READWRITE);
  SQLite::Transaction whole(db);
  migrate_schema(db);
  make_seal(db);
  whole.commit();
}

/// lens.lensbook -> lens.v1.lensbook, lens.v1-2.lensbook, ...
std::string kept_name(const std::filesystem::path& book, int version, int turn) {
  const std::string count = turn == 1 ? "" : fmt::format("-{}", turn);
  return (book.parent_path() /
          fmt::format("{}.v{}{}{}", book.stem().string(), version, count, book.extension().string()))
      .string();
}

std::string keep_old_file(const std::string& path, int version) {
  const PassingFile copy(path + ".keeping");
  copy_to_disk(path, copy.path());
  for (int turn = 1;; ++turn) {
    const std::string kept = kept_name(path, version, turn);
    if (rename_unless_there(copy.path(), kept)) return kept;
    if (same_bytes(path, kept)) return kept;  // kept by a migration that was cut off before its end
  }
}

Problem there_already(const BookName& book) {
  return file_problem(
      "file_exists", book.path,
      fmt::format("{} is there already and was left as it is. Choose another name, or move that "
                  "file away first.",
                  book.path));
}

}  // namespace

Done make_book(const BookName& book, const LensValues& values) {
  return guarded<Done>(book, "made", [&]() -> Done {
    const PassingFile passing(book.file + ".making");
    const PassingFile its_journal(passing.path() + "-journal");
    write_new(passing.path(), values);
    if (!rename_unless_there(passing.path(), book.file)) return there_already(book);
    settle_folder_of(book.file);
    return {};
  });
}

Outcome<std::string> migrate_book(const BookName& book, int from_version) {
  return guarded<Outcome<std::string>>(book, "brought to the present version", [&]() -> Outcome<std::string> {
    const PassingFile passing(book.file + ".migrating");
    const PassingFile its_journal(passing.path() + "-journal");
    copy_to_disk(book.file, passing.path());
    migrate_copy(passing.path());
    const std::string kept = keep_old_file(book.file, from_version);
    rename_over(passing.path(), book.file);
    settle_folder_of(book.file);
    return fmt::format("{} was brought from book version {} to {}. The old file is kept as {}.", book.name,
                       from_version, kBookVersion, kept);
  });
}

}  // namespace prismwright
