#pragma once

#include <ostream>
#include <string>
#include <vector>

namespace prismwright {

/// A plain table with aligned columns: words to the left, figures to the right. A figure that is rounded to
/// zero has no minus.
class TextTable {
 public:
  struct Column {
    std::string head;
    bool figures = false;  ///< right-aligned
  };

  explicit TextTable(std::vector<Column> columns);
  /// Adds a row. It should have one cell for each column: missing ones are blank, further ones are left out.
  void add(std::vector<std::string> cells);
  [[nodiscard]] bool empty() const { return rows_.empty(); }
  void print(std::ostream& out) const;

 private:
  [[nodiscard]] std::vector<std::size_t> widths() const;

  std::vector<Column> columns_;
  std::vector<std::vector<std::string>> rows_;
};

}  // namespace prismwright
