#pragma once

#include <string>

namespace prismwright {

/// A file that is locked while this lives, by the operating system's advisory lock (flock): it holds between
/// programs and within one, and ends with the process however that ends. The file is taken away with the lock;
/// one that a killed process left behind is no lock and is used again.
class LockFile {
 public:
  /// Never waits. Where the lock cannot be had, the answer does not hold it and tells why.
  static LockFile take(const std::string& path);

  LockFile(LockFile&& other) noexcept;
  LockFile& operator=(LockFile&& other) noexcept;
  ~LockFile();

  [[nodiscard]] bool holds() const { return fd_ >= 0; }
  /// 0 while it is held; else errno: EWOULDBLOCK where another opening holds it, ENOLCK, ENOSYS and the like
  /// where the disk knows no such lock, else why the file could not be opened.
  [[nodiscard]] int error() const { return error_; }

  /// Puts these words into the file, for whoever finds it locked; without effect where it may only be read.
  void say(const std::string& words) const;

 private:
  LockFile(int fd, std::string path, int error) : fd_(fd), path_(std::move(path)), error_(error) {}
  void let_go() noexcept;

  int fd_ = -1;
  std::string path_;
  int error_ = 0;
};

}  // namespace prismwright
