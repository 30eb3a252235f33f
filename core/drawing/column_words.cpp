#include "core/drawing/column_words.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/drawing/table_pages.h"

namespace prismwright {

namespace {

constexpr double kWords_mm = 2.4;
constexpr double kPitch_mm = 3.6;
constexpr double kPad_mm = 3;

double words_room(const PaperBox& column) { return column.high.x - column.low.x - 2 * kPad_mm; }
double first_line(const PaperBox& column) { return column.high.y - kPad_mm - kWords_mm; }

std::vector<std::string> broken_lines(const PaperBox& column, const std::vector<std::string>& lines) {
  std::vector<std::string> broken;
  for (const std::string& line : lines) {
    if (line.empty() || line.find('\t') != std::string::npos) {
      broken.push_back(line);
      continue;
    }
    const bool heading = line.front() == '#';
    for (const std::string& part :
         broken_words(line.substr(heading ? 1 : 0), kWords_mm * (heading ? 1.1 : 1), words_room(column)))
      broken.push_back((heading ? "#" : "") + part);
  }
  return broken;
}

/// The first cell from the left, the others ending at even steps.
void write_cells(SheetMaker& maker, const std::string& line, PaperPoint left, double room) {
  std::vector<std::string> cells(1);
  for (const char letter : line) {
    if (letter == '\t') cells.emplace_back();
    if (letter != '\t') cells.back() += letter;
  }
  const double step = room / static_cast<double>(cells.size());
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const PaperPoint place = {i == 0 ? left.x : left.x + step * static_cast<double>(i + 1), left.y};
    maker.write(
        {shortened(cells[i], kWords_mm, step - 1), place, kWords_mm, i == 0 ? Anchor::left : Anchor::right});
  }
}

}  // namespace

std::size_t column_room(const PaperBox& column) {
  return static_cast<std::size_t>(std::max(1.0, (first_line(column) - column.low.y - kPad_mm) / kPitch_mm));
}

std::size_t column_rows(const PaperBox& column, const std::vector<std::string>& lines) {
  return broken_lines(column, lines).size();
}

void write_column(SheetMaker& maker, const PaperBox& column, const std::vector<std::string>& lines) {
  std::vector<std::string> broken = broken_lines(column, lines);
  const std::size_t fit = column_room(column);
  if (broken.size() > fit) {
    const std::size_t left_out = broken.size() - fit + 1;
    broken.resize(fit - 1);
    broken.push_back(fmt::format("... and {} lines more", left_out));
  }
  for (std::size_t i = 0; i < broken.size(); ++i) {
    const PaperPoint place = {column.low.x + kPad_mm, first_line(column) - kPitch_mm * static_cast<double>(i)};
    if (broken[i].find('\t') != std::string::npos) {
      write_cells(maker, broken[i], place, words_room(column));
      continue;
    }
    const bool heading = !broken[i].empty() && broken[i].front() == '#';
    const std::string words =
        shortened(broken[i].substr(heading ? 1 : 0), kWords_mm, words_room(column), heading);
    maker.write({words, place, kWords_mm, Anchor::left, false, heading});
  }
}

}  // namespace prismwright
