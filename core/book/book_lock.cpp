#include "core/book/book_lock.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

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

/// Whether the open file still stands at that path: its last holder may just have taken it away.
bool still_there(int fd, const std::string& path) {
  struct stat opened {};
  struct stat named {};
  return ::fstat(fd, &opened) == 0 && ::stat(path.c_str(), &named) == 0 && opened.st_ino == named.st_ino &&
         opened.st_dev == named.st_dev;
}

}  // namespace

Outcome<BookLock> BookLock::take(const BookName& book) {
  const std::string path = book.file + ".lock";
  for (;;) {
    const int fd = ::open(path.c_str(), O_RDONLY | O_CREAT | O_CLOEXEC, 0666);
    if (fd < 0) return no_lock(book, errno);
    BookLock lock(fd, "");  // closes on the way out; without a path it takes no file away
    if (::flock(fd, LOCK_EX | LOCK_NB) != 0)
      return errno == EWOULDBLOCK ? open_elsewhere(book) : no_lock(book, errno);
    if (!still_there(fd, path)) continue;
    lock.path_ = path;
    return lock;
  }
}

BookLock::BookLock(BookLock&& other) noexcept
    : fd_(std::exchange(other.fd_, -1)), path_(std::exchange(other.path_, {})) {}

BookLock& BookLock::operator=(BookLock&& other) noexcept {
  if (this != &other) {
    let_go();
    fd_ = std::exchange(other.fd_, -1);
    path_ = std::exchange(other.path_, {});
  }
  return *this;
}

BookLock::~BookLock() { let_go(); }

void BookLock::let_go() noexcept {
  if (fd_ < 0) return;
  if (!path_.empty()) ::unlink(path_.c_str());  // while still locked: nobody can hold it now
  ::close(fd_);
  fd_ = -1;
}

}  // namespace prismwright
