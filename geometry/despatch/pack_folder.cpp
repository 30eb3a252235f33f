#include "geometry/despatch/pack_folder.h"

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <set>
#include <string_view>

#include <fcntl.h>
#include <fmt/format.h>
#include <stdio.h>
#include <sys/file.h>
#include <unistd.h>

#include "core/frame/cut_words.h"
#include "geometry/safe_file.h"

namespace prismwright {

namespace fs = std::filesystem;

namespace {

constexpr int kMostTries = 10000;

std::string numbered(const std::string& book, const std::string& date, int number) {
  const std::string name = fmt::format("{}-{}", pack_stem(book), date);
  return number == 1 ? name : fmt::format("{}-{}", name, number);
}

std::string hidden(const std::string& name) { return "." + name + ".part"; }

Problem unkept(const std::string& path, int error) {
  return file_problem("write", path,
                      fmt::format("{} could not be put in its place ({}). See to the folder and its disk.",
                                  path, std::strerror(error)));
}

/// An open folder; its lock goes with it, whatever becomes of the program.
class FolderLock {
 public:
  explicit FolderLock(const std::string& path)
      : file_(::open(path.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC)) {
    if (file_ < 0 || ::flock(file_, LOCK_EX | LOCK_NB) == 0) return;
    // Some shares know no such lock; only another holder is a reason to keep off.
    locks_ = errno != EWOULDBLOCK ? Locks::unknown : Locks::held_elsewhere;
  }
  ~FolderLock() {
    if (file_ >= 0) ::close(file_);
  }
  FolderLock(const FolderLock&) = delete;
  FolderLock& operator=(const FolderLock&) = delete;

  /// Nobody else works in the folder, as far as can be told.
  [[nodiscard]] bool is_free() const { return file_ >= 0 && locks_ != Locks::held_elsewhere; }
  /// Surely nobody does.
  [[nodiscard]] bool holds() const { return file_ >= 0 && locks_ == Locks::own; }

 private:
  enum class Locks { own, unknown, held_elsewhere };
  int file_;
  Locks locks_ = Locks::own;
};

void sync_folder(const std::string& path) {
  const int file = ::open(path.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (file < 0) return;
  ::fsync(file);
  ::close(file);
}

void sync_folders(const std::string& top) {
  for (const auto& entry : fs::recursive_directory_iterator(top))
    if (entry.is_directory()) sync_folder(entry.path().string());
  sync_folder(top);
}

/// Whether a hidden folder is one of a pack of this book: ".BOOK-YYYY-MM-DD.part", ".BOOK-YYYY-MM-DD-2.part".
bool is_leftover(std::string_view name, const std::string& book) {
  const std::string start = "." + pack_stem(book) + "-";
  constexpr std::string_view kDate = "dddd-dd-dd";
  if (!name.starts_with(start) || !name.ends_with(".part")) return false;
  name.remove_prefix(start.size());
  if (name.size() < kDate.size()) return false;
  for (std::size_t i = 0; i < kDate.size(); ++i) {
    const bool digit = name[i] >= '0' && name[i] <= '9';
    if (kDate[i] == 'd' ? !digit : name[i] != kDate[i]) return false;
  }
  return true;
}

}  // namespace

std::string pack_stem(const std::string& book) {
  const std::string stem = safe_stem(book);
  return stem.empty() || stem.front() == '.' ? "lens" + stem : stem;
}

std::string free_pack_name(const std::string& packs_folder, const std::string& book, const std::string& date) {
  for (int number = 1; number < kMostTries; ++number) {
    const std::string name = numbered(book, date, number);
    if (!fs::exists(fs::path(packs_folder) / name) && !fs::exists(fs::path(packs_folder) / hidden(name)))
      return name;
  }
  return numbered(book, date, kMostTries);
}

void clear_leftovers(const std::string& packs_folder, const std::string& book) {
  std::error_code error;
  std::vector<fs::path> found;
  for (const auto& entry : fs::directory_iterator(packs_folder, error))
    if (is_leftover(entry.path().filename().string(), book)) found.push_back(entry.path());
  for (const fs::path& path : found) {
    const FolderLock lock(path.string());
    if (lock.holds()) fs::remove_all(path, error);
  }
}

struct WorkFolder::Inside {
  Inside(std::string packs, std::string own)
      : packs_folder(std::move(packs)), path(std::move(own)), lock(path) {}
  ~Inside() {
    std::error_code ignored;
    if (!kept) fs::remove_all(path, ignored);
  }
  Inside(const Inside&) = delete;
  Inside& operator=(const Inside&) = delete;

  std::string packs_folder;
  std::string path;
  FolderLock lock;
  bool kept = false;
};

WorkFolder::WorkFolder(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
WorkFolder::WorkFolder(WorkFolder&&) noexcept = default;
WorkFolder::~WorkFolder() = default;

Outcome<WorkFolder> WorkFolder::open(const std::string& packs_folder, const std::string& name) {
  const std::string path = (fs::path(packs_folder) / hidden(name)).string();
  std::error_code error;
  if (!fs::create_directory(path, error)) {
    const std::string why = error ? error.message() : "another program builds there";
    return file_problem(
        "folder", path,
        fmt::format("The folder {} could not be made ({}). Choose another folder for the packs.", path, why));
  }
  auto inside = std::make_unique<Inside>(packs_folder, path);
  if (inside->lock.is_free()) return WorkFolder(std::move(inside));
  return file_problem(
      "folder", path,
      fmt::format("The folder {} is in use by another program. Wait until it has ended.", path));
}

const std::string& WorkFolder::path() const { return inside_->path; }

void WorkFolder::keep_only(const std::vector<std::string>& paths) {
  const std::set<std::string> wanted(paths.begin(), paths.end());
  std::vector<fs::path> strays;
  std::vector<fs::path> folders;
  for (const auto& entry : fs::recursive_directory_iterator(path())) {
    if (entry.is_directory()) {
      folders.push_back(entry.path());
    } else if (!wanted.contains(entry.path().lexically_relative(path()).generic_string())) {
      strays.push_back(entry.path());
    }
  }
  std::error_code ignored;
  for (const fs::path& stray : strays) fs::remove(stray, ignored);
  // Inner folders come after those that hold them. One that holds anything is not removed.
  for (auto folder = folders.rbegin(); folder != folders.rend(); ++folder)
    if (fs::is_empty(*folder, ignored)) fs::remove(*folder, ignored);
}

Outcome<std::string> WorkFolder::keep(const std::string& book, const std::string& date) {
  sync_folders(path());
  for (int number = 1; number < kMostTries; ++number) {
    const std::string place = (fs::path(inside_->packs_folder) / numbered(book, date, number)).string();
    if (::renameat2(AT_FDCWD, path().c_str(), AT_FDCWD, place.c_str(), RENAME_NOREPLACE) == 0) {
      inside_->kept = true;
      sync_folder(inside_->packs_folder);
      return place;
    }
    if (errno == EEXIST) continue;
    // Some file systems know no such rename: there the place is looked at first.
    const bool unknown_there = errno == EINVAL || errno == ENOSYS || errno == ENOTSUP;
    if (unknown_there && !fs::exists(place) && ::rename(path().c_str(), place.c_str()) == 0) {
      inside_->kept = true;
      sync_folder(inside_->packs_folder);
      return place;
    }
    if (!unknown_there) return unkept(place, errno);
  }
  return unkept(path(), EEXIST);
}

}  // namespace prismwright
