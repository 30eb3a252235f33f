#pragma once

#include <string>

namespace prismwright {

// Whole files, safely: what a name stands for is at every moment the old file or the new one. All throw
// std::system_error.

/// Copies a file, permissions included, and has it on disk when it returns. An older file at `to` is replaced.
void copy_to_disk(const std::string& from, const std::string& to);
/// Renames unless something stands at `to` already; then answers false.
bool rename_unless_there(const std::string& from, const std::string& to);
/// Renames over whatever stands at `to`.
void rename_over(const std::string& from, const std::string& to);
/// Has the names in the folder of this file on disk.
void settle_folder_of(const std::string& path);
/// Whether two files hold the same bytes.
bool same_bytes(const std::string& one, const std::string& other);
/// Takes a file away if it is there; never throws.
void remove_quietly(const std::string& path) noexcept;

/// A file that is taken away when this goes out of scope, unless it was renamed before.
class PassingFile {
 public:
  explicit PassingFile(std::string path) : path_(std::move(path)) { remove_quietly(path_); }
  ~PassingFile() { remove_quietly(path_); }
  PassingFile(const PassingFile&) = delete;
  PassingFile& operator=(const PassingFile&) = delete;
  [[nodiscard]] const std::string& path() const { return path_; }

 private:
  std::string path_;
};

}  // namespace prismwright
