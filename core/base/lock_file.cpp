#include "core/base/lock_file.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <utility>

namespace prismwright {
namespace {

/// One that another user left may be read alone, which is enough to lock it.
int opened(const std::string& path) {
  const int fd = ::open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0666);
  if (fd >= 0 || errno != EACCES) return fd;
  const int to_read = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
  if (to_read < 0) errno = EACCES;
  return to_read;
}

/// Whether the open file still stands at that path: its last holder may just have taken it away.
bool still_there(int fd, const std::string& path) {
  struct stat opened {};
  struct stat named {};
  return ::fstat(fd, &opened) == 0 && ::stat(path.c_str(), &named) == 0 && opened.st_ino == named.st_ino &&
         opened.st_dev == named.st_dev;
}

}  // namespace

LockFile LockFile::take(const std::string& path) {
  for (;;) {
    const int fd = opened(path);
    if (fd < 0) return {-1, {}, errno};
    if (::flock(fd, LOCK_EX | LOCK_NB) != 0) {
      const int error = errno;
      ::close(fd);
      return {-1, {}, error};
    }
    if (still_there(fd, path)) return {fd, path, 0};
    ::close(fd);
  }
}

LockFile::LockFile(LockFile&& other) noexcept
    : fd_(std::exchange(other.fd_, -1)),
      path_(std::exchange(other.path_, {})),
      error_(std::exchange(other.error_, 0)) {}

LockFile& LockFile::operator=(LockFile&& other) noexcept {
  if (this != &other) {
    let_go();
    fd_ = std::exchange(other.fd_, -1);
    path_ = std::exchange(other.path_, {});
    error_ = std::exchange(other.error_, 0);
  }
  return *this;
}

LockFile::~LockFile() { let_go(); }

void LockFile::say(const std::string& words) const {
  if (fd_ < 0 || ::ftruncate(fd_, 0) != 0) return;
  // Who finds none of it, or half, is told of another program all the same.
  [[maybe_unused]] const auto written = ::pwrite(fd_, words.data(), words.size(), 0);
}

void LockFile::let_go() noexcept {
  if (fd_ < 0) return;
  ::unlink(path_.c_str());  // while still locked: nobody can hold it now
  ::close(fd_);
  fd_ = -1;
}

}  // namespace prismwright
