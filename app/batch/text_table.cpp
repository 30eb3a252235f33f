#include "app/batch/text_table.h"

#include <algorithm>
#include <utility>

namespace prismwright {

namespace {

/// How many letters a UTF-8 text shows: every byte that does not go on with a letter begun before.
std::size_t letters(const std::string& text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char byte) { return (byte & 0xC0) != 0x80; }));
}

std::string padded(const std::string& text, std::size_t width, bool to_the_right) {
  const std::string room(width - std::min(width, letters(text)), ' ');
  return to_the_right ? room + text : text + room;
}

/// "-0.00" is a small figure rounded; its sign says nothing.
void drop_minus_of_zero(std::string& figure) {
  if (figure.size() > 1 && figure[0] == '-' && figure.find_first_not_of("0.", 1) == std::string::npos)
    figure.erase(0, 1);
}

std::string without_trailing_room(std::string line) {
  line.erase(line.find_last_not_of(' ') + 1);
  return line;
}

}  // namespace

TextTable::TextTable(std::vector<Column> columns) : columns_(std::move(columns)) {}

void TextTable::add(std::vector<std::string> cells) {
  cells.resize(columns_.size());
  for (std::size_t i = 0; i < cells.size(); ++i) {
    if (columns_[i].figures) drop_minus_of_zero(cells[i]);
  }
  rows_.push_back(std::move(cells));
}

std::vector<std::size_t> TextTable::widths() const {
  std::vector<std::size_t> widths;
  for (std::size_t i = 0; i < columns_.size(); ++i) {
    widths.push_back(letters(columns_[i].head));
    for (const auto& row : rows_) widths[i] = std::max(widths[i], letters(row[i]));
  }
  return widths;
}

void TextTable::print(std::ostream& out) const {
  const std::vector<std::size_t> width = widths();
  const auto print_line = [&](auto&& cell) {
    std::string line = "  ";
    for (std::size_t i = 0; i < columns_.size(); ++i) {
      if (i > 0) line += "  ";
      line += padded(cell(i), width[i], columns_[i].figures);
    }
    out << without_trailing_room(std::move(line)) << '\n';
  };
  print_line([&](std::size_t i) -> const std::string& { return columns_[i].head; });
  for (const auto& row : rows_) print_line([&](std::size_t i) -> const std::string& { return row[i]; });
}

}  // namespace prismwright
