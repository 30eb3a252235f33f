#pragma once

#include <string>
#include <vector>

#include "core/drawing/sheet_maker.h"

namespace prismwright {

/// One line of a table of `TableColumn`s, or words across it.
struct TableLine {
  enum class Kind {
    heading,  ///< bold, across the table, with a rule above
    head,     ///< names of the columns
    row,
    words,  ///< across the table
  };
  Kind kind = Kind::row;
  std::vector<std::string> cells;
};

struct TableColumn {
  double width_mm = 20;
  bool right = false;  ///< numbers end at its right edge
};

/// Lines that are kept on one page where they fit on one; the heading is said again where they do not.
struct TableBlock {
  std::vector<TableColumn> columns;
  std::vector<TableLine> lines;
};

/// Fills sheets with blocks, column of the page by column of the page.
class TablePages {
 public:
  /// Width of a table, mm: A4 and Letter upright hold one beside another, A3 lying two.
  static constexpr double kWidth_mm = 188;

  explicit TablePages(Paper paper);
  /// Goes on below `top_mm` on a sheet that is drawn on already, then on sheets of the same size.
  TablePages(SheetMaker first, double top_mm);
  void add(const TableBlock& block);
  [[nodiscard]] std::vector<SheetMaker> take() { return std::move(pages_); }

 private:
  void next_column();
  void start_page();
  void write(const TableBlock& block, const TableLine& line);
  [[nodiscard]] double room_mm() const;

  SheetSize size_;
  std::vector<SheetMaker> pages_;
  int columns_ = 1;
  int column_ = 0;
  double first_top_ = 0;  ///< of the columns of a sheet that was drawn on before; 0: none was
  double left_ = 0;
  double top_ = 0;  ///< of the next line
};

/// Adds words to the block as lines across it, broken where they are wider than a table.
void add_words(TableBlock& block, const std::string& words);

/// Words broken into lines no wider than the room, between words and, where one word is wider, within it.
std::vector<std::string> broken_words(const std::string& words, double size_mm, double room_mm,
                                      bool bold = false);

}  // namespace prismwright
