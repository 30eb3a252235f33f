#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/outcome.h"
#include "core/drawing/drawing.h"

namespace prismwright {

/// Files of one piece on their way into a folder. The first that cannot be written ends it.
class PieceFiles {
 public:
  explicit PieceFiles(std::string folder) : folder_(std::move(folder)) {}

  /// `path` in the folder, with '/' between folders, which are made where they are missing.
  void put(const std::string& path, std::string_view bytes);
  void put(const std::string& path, const Outcome<std::string>& bytes);
  /// STEM.pdf with all sheets and, where wanted, STEM.svg, STEM-2.svg, ... with one each.
  void put_drawing(const std::string& stem, const Drawing& drawing, bool svg);
  /// Files that were written by others, by their full paths.
  void take(const std::vector<std::string>& full_paths);

  [[nodiscard]] bool well() const { return !problem_; }
  [[nodiscard]] Outcome<std::vector<std::string>> paths() const;

 private:
  std::string folder_;
  std::vector<std::string> paths_;
  std::optional<Problem> problem_;
};

/// The one file of a piece whose bytes stand already.
Outcome<std::vector<std::string>> one_file(const std::string& folder, const std::string& path,
                                           const Outcome<std::string>& bytes);

}  // namespace prismwright
