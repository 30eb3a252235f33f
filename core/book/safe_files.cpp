#include "core/book/safe_files.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <system_error>

namespace prismwright {
namespace {

[[noreturn]] void fail(const std::string& path) {
  throw std::system_error(errno, std::generic_category(), path);
}

/// An open file that closes itself.
class Handle {
 public:
  Handle(const std::string& path, int flags, mode_t mode = 0)
      : fd_(::open(path.c_str(), flags | O_CLOEXEC, mode)) {
    if (fd_ < 0) fail(path);
  }
  ~Handle() { ::close(fd_); }
  Handle(const Handle&) = delete;
  Handle& operator=(const Handle&) = delete;
  [[nodiscard]] int fd() const { return fd_; }

 private:
  int fd_;
};

void write_all(const Handle& file, const char* bytes, std::size_t size, const std::string& path) {
  while (size > 0) {
    const ssize_t written = ::write(file.fd(), bytes, size);
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) fail(path);
    bytes += written;
    size -= static_cast<std::size_t>(written);
  }
}

}  // namespace

void copy_to_disk(const std::string& from, const std::string& to) {
  const Handle source(from, O_RDONLY);
  struct stat about {};
  if (::fstat(source.fd(), &about) != 0) fail(from);
  const Handle target(to, O_WRONLY | O_CREAT | O_TRUNC, about.st_mode & 0777);
  std::array<char, 65536> buffer{};
  for (;;) {
    const ssize_t got = ::read(source.fd(), buffer.data(), buffer.size());
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) fail(from);
    if (got == 0) break;
    write_all(target, buffer.data(), static_cast<std::size_t>(got), to);
  }
  if (::fsync(target.fd()) != 0) fail(to);
}

bool rename_unless_there(const std::string& from, const std::string& to) {
  if (::renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, to.c_str(), RENAME_NOREPLACE) == 0) return true;
  if (errno == EEXIST) return false;
  if (errno != EINVAL && errno != ENOSYS) fail(to);
  // A file system that cannot do it in one act; the book's lock keeps other windows away meanwhile.
  std::error_code ignored;
  if (std::filesystem::exists(std::filesystem::symlink_status(to, ignored))) return false;
  rename_over(from, to);
  return true;
}

void rename_over(const std::string& from, const std::string& to) {
  if (::rename(from.c_str(), to.c_str()) != 0) fail(to);
}

void settle_folder_of(const std::string& path) {
  const std::filesystem::path folder = std::filesystem::path(path).parent_path();
  const Handle handle(folder.empty() ? "." : folder.string(), O_RDONLY | O_DIRECTORY);
  if (::fsync(handle.fd()) != 0 && errno != EINVAL) fail(folder.string());  // EINVAL: it keeps no such promise
}

bool same_bytes(const std::string& one, const std::string& other) {
  std::ifstream first(one, std::ios::binary);
  std::ifstream second(other, std::ios::binary);
  using Bytes = std::istreambuf_iterator<char>;
  return first.is_open() && second.is_open() && std::equal(Bytes(first), Bytes(), Bytes(second), Bytes());
}

void remove_quietly(const std::string& path) noexcept { ::unlink(path.c_str()); }

}  // namespace prismwright
