#pragma once

#include <cstdlib>
#include <filesystem>
#include <string>
#include <vector>

namespace prismwright {

/// A new empty folder for one test; gone with all in it when the test ends.
class EmptyFolder {
 public:
  EmptyFolder() {
    std::string name = (std::filesystem::temp_directory_path() / "prismwright-XXXXXX").string();
    path_ = ::mkdtemp(name.data());
  }
  ~EmptyFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  EmptyFolder(const EmptyFolder&) = delete;
  EmptyFolder& operator=(const EmptyFolder&) = delete;

  [[nodiscard]] std::string path() const { return path_.string(); }
  [[nodiscard]] std::string file(const std::string& name) const { return (path_ / name).string(); }
  [[nodiscard]] std::vector<std::string> names() const {
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(path_))
      names.push_back(entry.path().filename().string());
    return names;
  }

 private:
  std::filesystem::path path_;
};

}  // namespace prismwright
