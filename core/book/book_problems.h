#pragma once

#include <new>
#include <string>
#include <system_error>

#include "core/base/outcome.h"
#include "core/book/sqlite_api.h"
#include "core/book/value_cells.h"

namespace prismwright {

/// How a book is spoken of and where it lies.
struct BookName {
  explicit BookName(std::string its_path);
  std::string path;  ///< as the caller wrote it; goes into Problem::where
  std::string name;  ///< the file's name, for sentences
  std::string file;  ///< whole path with links followed: its lock, journal and copies lie beside this
};

/// The book's file does not hold what a lensbook holds. `detail` says what is wrong, without a full stop.
Problem damaged_problem(const BookName& book, const std::string& detail);
/// SQLite could not do `act` ("read", "change"): full disk, failing disk, no permission, damage.
Problem sqlite_problem(const BookName& book, const std::string& act, const SQLite::Exception& error);
/// The system could not do `act` ("make", "read").
Problem system_problem(const BookName& book, const std::string& act, const std::error_code& error);
Problem memory_problem(const BookName& book);

/// Runs an act that may throw and answers what it answers, or the Problem it met.
template <class Result, class Act>
Result guarded(const BookName& book, const std::string& what, Act&& act) {
  try {
    return act();
  } catch (const BookDamage& damage) {
    return damaged_problem(book, damage.what());
  } catch (const SQLite::Exception& error) {
    return sqlite_problem(book, what, error);
  } catch (const std::system_error& error) {
    return system_problem(book, what, error.code());
  } catch (const std::bad_alloc&) {
    return memory_problem(book);
  }
}

}  // namespace prismwright
