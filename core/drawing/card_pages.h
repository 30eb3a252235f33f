#pragma once

#include <string>
#include <vector>

#include "core/drawing/sheet_maker.h"

namespace prismwright {

/// Upright sheets that are filled from the top down with headings, tables and lines; the foot of each stays
/// free for the title block. What does not fit goes on to the next sheet.
class CardPages {
 public:
  static constexpr double kRow_mm = 6;  ///< height of a table's row
  using Cells = std::vector<std::string>;

  explicit CardPages(Paper paper);

  [[nodiscard]] double wide() const { return right_ - left_; }
  [[nodiscard]] SheetMaker& maker() { return makers_.back(); }
  /// Where the next thing begins: left edge and top.
  [[nodiscard]] PaperPoint place() const { return {left_, top_}; }
  void skip(double mm) { top_ -= mm; }
  [[nodiscard]] double room() const { return top_ - low_; }  ///< left on this page, mm

  /// Turns the page unless there is this much room left on it, mm.
  void need(double mm);
  /// A heading, on one page with so much of what follows.
  void heading(const std::string& words, double with_mm);
  /// A ruled table over the whole width; `shares` of it for the columns. The head is said again on a new page.
  void table(const std::vector<double>& shares, const Cells& head, const std::vector<Cells>& rows);
  /// Sentences, each broken where it is wider than the page.
  void lines(const std::vector<std::string>& words);

  [[nodiscard]] std::vector<SheetMaker> take() { return std::move(makers_); }

 private:
  void turn_page();
  void row(const std::vector<double>& widths, const Cells& cells, bool head);

  Paper paper_;
  std::vector<SheetMaker> makers_;
  double left_ = 0;
  double right_ = 0;
  double low_ = 0;
  double high_ = 0;
  double top_ = 0;
};

}  // namespace prismwright
