#include "geometry/safe_file.h"

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <system_error>

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

namespace prismwright {

namespace {

std::string advice_for(int error) {
  switch (error) {
    case ENOSPC:
    case EDQUOT:
      return "The disk is full: make room on it or choose a folder on another disk.";
    case EFBIG:
      return "The file is larger than may be written here: choose a folder on another disk.";
    case EACCES:
    case EPERM:
      return "There is no right to write here: choose another folder or change its permissions.";
    case EROFS:
      return "The disk is read-only: choose a folder on another disk.";
    default:
      return "Choose another folder or see to the disk.";
  }
}

Problem unwritten(const std::string& path, int error) {
  return file_problem(
      "write", path,
      fmt::format("{} could not be written ({}). {}", path, std::strerror(error), advice_for(error)));
}

/// An open file; closed and removed on the way out unless it has been kept.
class PartFile {
 public:
  explicit PartFile(std::string path)
      : path_(std::move(path)), file_(::open(path_.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0644)) {}
  ~PartFile() {
    if (file_ < 0) return;
    ::close(file_);
    ::unlink(path_.c_str());
  }
  PartFile(const PartFile&) = delete;
  PartFile& operator=(const PartFile&) = delete;

  [[nodiscard]] bool is_open() const { return file_ >= 0; }

  /// Answers 0 or the error.
  int write(std::string_view bytes) {
    while (!bytes.empty()) {
      const ssize_t written = ::write(file_, bytes.data(), bytes.size());
      if (written < 0 && errno == EINTR) continue;
      if (written < 0) return errno;
      if (written == 0) return ENOSPC;
      bytes.remove_prefix(static_cast<std::size_t>(written));
    }
    return ::fdatasync(file_) == 0 ? 0 : errno;
  }

  int rename_to(const std::string& path) {
    const int file = file_;
    file_ = -1;
    int error = ::close(file) == 0 ? 0 : errno;
    if (error == 0 && ::rename(path_.c_str(), path.c_str()) != 0) error = errno;
    if (error != 0) ::unlink(path_.c_str());
    return error;
  }

 private:
  std::string path_;
  int file_;
};

}  // namespace

Done ready_folder(const std::string& folder) {
  std::error_code error;
  std::filesystem::create_directories(folder, error);
  if (!error && std::filesystem::is_directory(folder, error)) return {};
  if (std::filesystem::exists(folder)) {
    return file_problem("folder", folder,
                        fmt::format("{} is a file, not a folder. Give the name of a folder.", folder));
  }
  return file_problem("folder", folder,
                      fmt::format("The folder {} could not be made ({}). {}", folder, error.message(),
                                  advice_for(error.value())));
}

Done write_whole(const std::string& path, std::string_view bytes) {
  PartFile part(path + ".part");
  if (!part.is_open()) return unwritten(path, errno);
  if (const int error = part.write(bytes); error != 0) return unwritten(path, error);
  if (const int error = part.rename_to(path); error != 0) return unwritten(path, error);
  return {};
}

}  // namespace prismwright
