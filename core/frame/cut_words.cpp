#include "core/frame/cut_words.h"

#include <algorithm>
#include <cctype>
#include <limits>

#include <fmt/format.h>

#include "core/drawing/lengths.h"
#include "core/frame/cut_shapes.h"

namespace prismwright {

namespace {

bool alike(const HoleRow& a, const HoleRow& b) {
  return a.diameter_mm == b.diameter_mm && a.sink_diameter_mm == b.sink_diameter_mm &&
         a.sunk_in_back == b.sunk_in_back && a.depth_mm == b.depth_mm && a.use == b.use;
}

void count(std::vector<HoleRow>& rows, const HoleRow& hole) {
  const auto known = std::ranges::find_if(rows, [&](const HoleRow& row) { return alike(row, hole); });
  if (known == rows.end()) {
    rows.push_back(hole);
  } else {
    known->count += 1;
  }
}

HoleRow row_for(const PlateHole& hole) {
  const bool sunk = hole.sink_diameter_mm > hole.diameter_mm;
  return {1, hole.diameter_mm, sunk ? hole.sink_diameter_mm : 0, sunk && hole.sunk_in_back, 0, hole.use};
}

std::string joined_words(const std::vector<HoleRow>& rows) {
  std::string words;
  for (const HoleRow& row : rows) words += (words.empty() ? "" : "; ") + words_of(row);
  return words;
}

/// Marks as many lines as are needed to keep each within about so many letters.
void add_marks(const std::vector<std::string>& marks, std::vector<std::string>& lines) {
  constexpr std::size_t kLetters = 70;
  std::string line = "marks:";
  for (const std::string& mark : marks) {
    if (line.size() + mark.size() > kLetters) {
      lines.push_back(line);
      line = "  ";
    }
    line += " " + mark;
  }
  lines.push_back(line);
}

std::string pocket_words(const FlatPart& part) {
  std::string depths;
  for (const double depth : pocket_depths_mm(part))
    depths += (depths.empty() ? "" : ", ") + shortest(depth) + " mm";
  return depths;
}

}  // namespace

std::vector<HoleRow> hole_rows(const FlatPart& part) {
  std::vector<HoleRow> rows;
  for (const PlateHole& hole : part.holes) count(rows, row_for(hole));
  return rows;
}

std::size_t row_of(const std::vector<HoleRow>& rows, const PlateHole& hole) {
  const HoleRow one = row_for(hole);
  const auto found = std::ranges::find_if(rows, [&](const HoleRow& row) { return alike(row, one); });
  return static_cast<std::size_t>(found - rows.begin());
}

std::vector<HoleRow> bore_rows(const FlatPart& part) {
  std::vector<HoleRow> rows;
  for (const PlateBore& bore : part.bores)
    count(rows, {1, bore.diameter_mm, 0, false, bore.depth_mm, bore.use});
  return rows;
}

std::string words_of(const HoleRow& row) {
  std::string words = fmt::format("{} x {} mm", row.count, LengthWords{}.plain(row.diameter_mm));
  if (row.depth_mm > 0) words += fmt::format(" by {} mm deep", LengthWords{}.plain(row.depth_mm));
  if (!row.use.empty()) words += " " + row.use;
  if (row.sink_diameter_mm > 0) {
    words += fmt::format(", sunk 90 deg to {} mm from the {}", LengthWords{}.plain(row.sink_diameter_mm),
                         row.sunk_in_back ? "back" : "front");
  }
  return words;
}

std::vector<double> pocket_depths_mm(const FlatPart& part) {
  std::vector<double> depths;
  for (const PlatePocket& pocket : blind_pockets(part)) {
    if (std::ranges::find(depths, pocket.depth_mm) == depths.end()) depths.push_back(pocket.depth_mm);
  }
  return depths;
}

std::string short_marks(const std::vector<std::string>& marks) {
  if (marks.empty()) return "";
  return marks.size() == 1 ? marks.front() : fmt::format("{} and {} alike", marks.front(), marks.size() - 1);
}

std::vector<std::string> cut_notes(const FlatPart& part, const std::vector<std::string>& marks) {
  std::vector<std::string> lines;
  lines.push_back(fmt::format("{}, {}, {} mm thick, {} {}", name_of(part.kind), name_of(part.metal),
                              shortest(part.thickness_mm), marks.size(),
                              marks.size() == 1 ? "piece" : "pieces"));
  add_marks(marks, lines);
  lines.emplace_back("all sizes in mm, 1 unit = 1 mm, true edges, kerf is the shop's; seen from the front");
  if (const std::string depths = pocket_words(part); !depths.empty())
    lines.push_back("layer POCKET: blind, into the front face, deep " + depths);
  if (!part.holes.empty()) lines.push_back("layer HOLE: " + joined_words(hole_rows(part)));
  if (!part.bores.empty()) lines.push_back("then drill ends: " + joined_words(bore_rows(part)));
  return lines;
}

std::string safe_stem(const std::string& words) {
  std::string stem = words;
  std::ranges::replace_if(
      stem,
      [](unsigned char c) { return c >= 0x80 || (std::isalnum(c) == 0 && c != '-' && c != '_' && c != '.'); },
      '-');
  return stem;
}

std::string cut_file_stem(const FlatPart& first, std::size_t count) {
  return safe_stem(fmt::format("{}_{}mm_x{}", first.mark, shortest(first.thickness_mm), count));
}

}  // namespace prismwright
