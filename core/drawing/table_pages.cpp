#include "core/drawing/table_pages.h"

#include <algorithm>
#include <sstream>

#include "core/drawing/sheet_layout.h"

namespace prismwright {

namespace {

constexpr double kWords_mm = 2.4;
constexpr double kPitch_mm = 3.5;
constexpr double kHeadingPitch_mm = 6.2;
constexpr double kHeading_mm = 2.9;
constexpr double kHead_mm = 2.1;
constexpr double kPad_mm = 3;  ///< between the border and a table
constexpr double kBetween_mm = 8;
constexpr double kInset_mm = 1;

double pitch_of(const TableLine& line) {
  return line.kind == TableLine::Kind::heading ? kHeadingPitch_mm : kPitch_mm;
}

double height_of(const TableBlock& block) {
  double sum = 0;
  for (const TableLine& line : block.lines) sum += pitch_of(line);
  return sum;
}

double size_of(TableLine::Kind kind) {
  return kind == TableLine::Kind::heading ? kHeading_mm : kind == TableLine::Kind::head ? kHead_mm : kWords_mm;
}

}  // namespace

TablePages::TablePages(Paper paper)
    : size_{paper, paper == Paper::a3}, columns_(paper == Paper::a3 ? 2 : 1), column_(columns_) {}

TablePages::TablePages(SheetMaker first, double top_mm)
    : size_(first.size()),
      columns_(size_.paper == Paper::a3 && size_.landscape ? 2 : 1),
      column_(-1),
      first_top_(top_mm) {
  pages_.push_back(std::move(first));
}

void TablePages::start_page() {
  pages_.emplace_back(size_);
  column_ = 0;
}

void TablePages::next_column() {
  if (pages_.empty() || ++column_ >= columns_) start_page();
  const PaperBox frame = pages_.back().frame();
  const double wide = columns_ * kWidth_mm + (columns_ - 1) * kBetween_mm;
  left_ = (frame.low.x + frame.high.x - wide) / 2 + column_ * (kWidth_mm + kBetween_mm);
  top_ = pages_.size() == 1 && first_top_ > 0 ? first_top_ : frame.high.y - kPad_mm;
}

double TablePages::room_mm() const {
  if (pages_.empty()) return 0;
  return top_ - (pages_.back().frame().low.y + SheetRooms::title_block + kPad_mm);
}

void TablePages::add(const TableBlock& block) {
  if (height_of(block) > room_mm()) next_column();
  const TableLine* heading = nullptr;
  const TableLine* head = nullptr;
  for (const TableLine& line : block.lines) {
    if (pitch_of(line) > room_mm()) {
      next_column();
      if (heading) write(block, {TableLine::Kind::heading, {heading->cells.front() + " (further)"}});
      if (head) write(block, *head);
    }
    if (line.kind == TableLine::Kind::heading) heading = &line;
    if (line.kind == TableLine::Kind::head) head = &line;
    write(block, line);
  }
}

void TablePages::write(const TableBlock& block, const TableLine& line) {
  SheetMaker& maker = pages_.back();
  const double size = size_of(line.kind);
  const double base = top_ - pitch_of(line) + 0.27 * size + 0.3;
  top_ -= pitch_of(line);
  const bool bold = line.kind == TableLine::Kind::heading;
  const bool topmost = top_ + kHeadingPitch_mm > maker.frame().high.y - kPad_mm - 0.001;
  if (bold && !topmost)
    maker.line({left_, top_ + kHeadingPitch_mm - 0.8}, {left_ + kWidth_mm, top_ + kHeadingPitch_mm - 0.8});
  if (line.kind == TableLine::Kind::heading || line.kind == TableLine::Kind::words) {
    const std::string words = shortened(clean_words(line.cells.front()), size, kWidth_mm - 2 * kInset_mm, bold);
    maker.write({words, {left_ + kInset_mm, base}, size, Anchor::left, false, bold});
    return;
  }
  double x = left_;
  for (std::size_t i = 0; i < line.cells.size() && i < block.columns.size(); ++i) {
    const TableColumn& column = block.columns[i];
    const double place = column.right ? x + column.width_mm - kInset_mm : x + kInset_mm;
    const std::string words = shortened(clean_words(line.cells[i]), size, column.width_mm - kInset_mm);
    maker.write({words, {place, base}, size, column.right ? Anchor::right : Anchor::left, false, false});
    x += column.width_mm;
  }
}

void add_words(TableBlock& block, const std::string& words) {
  for (std::string& line : broken_words(words, kWords_mm, TablePages::kWidth_mm - 2 * kInset_mm))
    block.lines.push_back({TableLine::Kind::words, {std::move(line)}});
}

std::vector<std::string> broken_words(const std::string& words, double size_mm, double room_mm, bool bold) {
  std::vector<std::string> lines;
  std::istringstream rest(clean_words(words));
  std::string word;
  while (rest >> word) {
    const std::string longer = lines.empty() ? word : lines.back() + " " + word;
    if (!lines.empty() && text_width_mm(longer, size_mm, bold) <= room_mm) {
      lines.back() = longer;
      continue;
    }
    // A room below nothing is too narrow even for no word at all: each letter gets a line of its own.
    while (!word.empty() && text_width_mm(word, size_mm, bold) > room_mm) {
      const std::size_t kept = fitting_bytes(word, size_mm, room_mm, bold);
      lines.push_back(word.substr(0, kept));
      word.erase(0, kept);
    }
    if (!word.empty()) lines.push_back(word);
  }
  return lines;
}

}  // namespace prismwright
