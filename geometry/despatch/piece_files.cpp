#include "geometry/despatch/piece_files.h"

#include <filesystem>

#include <fmt/format.h>

#include "geometry/drawing_pdf.h"
#include "geometry/drawing_svg.h"
#include "geometry/safe_file.h"

namespace prismwright {

void PieceFiles::put(const std::string& path, std::string_view bytes) {
  if (problem_) return;
  const auto whole = std::filesystem::path(folder_) / path;
  Done done = ready_folder(whole.parent_path().string());
  if (done) done = write_whole(whole.string(), bytes);
  if (done) {
    paths_.push_back(path);
  } else {
    problem_ = done.problem();
  }
}

void PieceFiles::put(const std::string& path, const Outcome<std::string>& bytes) {
  if (problem_) return;
  if (bytes) {
    put(path, std::string_view(*bytes));
  } else {
    problem_ = bytes.problem();
  }
}

void PieceFiles::put_drawing(const std::string& stem, const Drawing& drawing, bool svg) {
  put(stem + ".pdf", pdf_bytes(drawing));
  if (!svg) return;
  for (std::size_t i = 0; i < drawing.sheets.size() && !problem_; ++i) {
    const std::string name = i == 0 ? stem : fmt::format("{}-{}", stem, i + 1);
    put(name + ".svg", std::string_view(svg_text(drawing.sheets[i], drawing.title)));
  }
}

void PieceFiles::take(const std::vector<std::string>& full_paths) {
  for (const std::string& path : full_paths)
    paths_.push_back(std::filesystem::path(path).lexically_relative(folder_).generic_string());
}

Outcome<std::vector<std::string>> PieceFiles::paths() const {
  if (problem_) return *problem_;
  return paths_;
}

Outcome<std::vector<std::string>> one_file(const std::string& folder, const std::string& path,
                                           const Outcome<std::string>& bytes) {
  PieceFiles files(folder);
  files.put(path, bytes);
  return files.paths();
}

}  // namespace prismwright
