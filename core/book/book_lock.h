#pragma once

#include <utility>

#include "core/base/lock_file.h"
#include "core/base/outcome.h"
#include "core/book/book_problems.h"

namespace prismwright {

/// The right to write in a book, held by one opening at a time.
///
/// It is a LockFile beside the book, NAME.lock, and never meets the byte locks that SQLite sets on the book
/// itself.
class BookLock {
 public:
  /// Problem "open_elsewhere" when another opening holds it, "not_writable" when the folder takes no file.
  static Outcome<BookLock> take(const BookName& book);

 private:
  explicit BookLock(LockFile file) : file_(std::move(file)) {}

  LockFile file_;
};

}  // namespace prismwright
