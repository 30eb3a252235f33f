#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/base/outcome.h"

namespace prismwright {

/// The book's name as file names carry it; what they cannot carry stands as '-'.
std::string pack_stem(const std::string& book);

/// BOOK-YYYY-MM-DD, or with -2, -3, ... the first that is free in the folder, BOOK as pack_stem has it.
std::string free_pack_name(const std::string& packs_folder, const std::string& book, const std::string& date);

/// Takes out what packs of this book that were killed have left; a pack that another program is just building
/// stays.
void clear_leftovers(const std::string& packs_folder, const std::string& book);

/// A pack while it is built: a hidden folder beside the place that it will have (".NAME.part"). It is locked
/// while it lives, and gone with everything in it unless it was kept.
class WorkFolder {
 public:
  /// Refused (file Problem): a folder that cannot be made, or that another program builds in.
  static Outcome<WorkFolder> open(const std::string& packs_folder, const std::string& name);
  WorkFolder(WorkFolder&&) noexcept;
  WorkFolder& operator=(WorkFolder&&) = delete;
  ~WorkFolder();

  [[nodiscard]] const std::string& path() const;
  /// Takes out every file that is not among these paths (in the folder), and folders without any.
  void keep_only(const std::vector<std::string>& paths);
  /// Puts the folder in its place, whole and on the disk; answers its path there. Where the place was taken
  /// meanwhile the next free name is.
  Outcome<std::string> keep(const std::string& book, const std::string& date);

 private:
  struct Inside;
  explicit WorkFolder(std::unique_ptr<Inside> inside);
  std::unique_ptr<Inside> inside_;
};

}  // namespace prismwright
