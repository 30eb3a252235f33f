#pragma once

#include <string>

#include "core/base/outcome.h"
#include "core/book/book_problems.h"

namespace prismwright {

/// The right to write in a book, held by one opening at a time.
///
/// It is an advisory lock (flock) on a file beside the book, NAME.lock: it holds between programs and within
/// one, never meets the byte locks that SQLite sets on the book itself, and ends with the process however that
/// ends. The file is taken away with the lock; one that a killed process left behind is no lock and is used
/// again.
class BookLock {
 public:
  /// Problem "open_elsewhere" when another opening holds it, "not_writable" when the folder takes no file.
  static Outcome<BookLock> take(const BookName& book);

  BookLock(BookLock&& other) noexcept;
  BookLock& operator=(BookLock&& other) noexcept;
  ~BookLock();

 private:
  BookLock(int fd, std::string path) : fd_(fd), path_(std::move(path)) {}
  void let_go() noexcept;

  int fd_ = -1;
  std::string path_;
};

}  // namespace prismwright
