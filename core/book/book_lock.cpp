#include "core/book/book_lock.h"

#include <fmt/format.h>

#include <cerrno>
#include <cstring>
#include <utility>

namespace prismwright {
namespace {

Problem open_elsewhere(const BookName& book) {
  return file_problem("open_elsewhere", book.path,
                      fmt::format("{} is open in another window; this one shows it read-only.", book.name));
}

Problem no_lock(const BookName& book, int error) {
  return file_problem(
      "not_writable", book.path,
      fmt::format("The folder of {} cannot be written ({}), so the book is shown read-only. Copy it "
                  "to another folder to change it.",
                  book.name, std::strerror(error)));
}

}  // namespace

Outcome<BookLock> BookLock::take(const BookName& book) {
  LockFile file = LockFile::take(book.file + ".lock");
  if (file.holds()) return BookLock(std::move(file));
  return file.error() == EWOULDBLOCK ? open_elsewhere(book) : no_lock(book, file.error());
}

}  // namespace prismwright
