#include <algorithm>
#include <cmath>

#include "core/drawing/text_box.h"
#include "core/papers/document_pages.h"
#include "core/papers/document_type.h"

namespace prismwright {

using namespace document_type;

namespace {

constexpr double kFactName = 0.44;     ///< share of a fact's width that its name takes
constexpr double kAfterNumbers = 3.5;  ///< pads before words that follow numbers
constexpr std::size_t kFirstRows = 2;  ///< that stand below a head at least

bool is_total(const DocumentPages::Cells& cells) {
  return !cells.empty() && cells.front().starts_with(DocumentPages::kTotal);
}

/// Words at the left of a column are kept off numbers that end where it begins.
double left_pad(const std::vector<bool>& right, std::size_t column, double pad) {
  return !right[column] && column > 0 && right[column - 1] ? kAfterNumbers * pad : pad;
}

DocumentPages::Cells without_sign(DocumentPages::Cells cells) {
  cells.front().erase(0, 1);
  return cells;
}

}  // namespace

double DocumentPages::write_fact(const Fact& fact, PaperPoint at, double wide, bool write) {
  const double size = kCell_mm * scale_;
  const double pad = kCellPad_mm * scale_;
  const double name = kFactName * wide;
  const auto column = [&](const std::string& words, double x, double room, bool bold) {
    double y = at.y - 1.25 * size;
    const std::vector<std::string> lines = lines_of(words, size, room, bold);
    for (const std::string& line : lines) {
      if (write) maker().write({line, {x, y}, size, Anchor::left, false, bold});
      y -= kCellPitch * size;
    }
    return lines.size();
  };
  const std::size_t names = column(fact.first, at.x + pad, name - 2 * pad, false);
  const std::size_t values = column(fact.second, at.x + name, wide - name - pad, true);
  const std::size_t most = std::max({names, values, std::size_t{1}});
  return (static_cast<double>(most - 1) * kCellPitch + 1.85) * size;
}

void DocumentPages::facts(const std::vector<Fact>& facts) {
  const double half = (wide() - kBetweenHalves_mm * scale_) / 2;
  const std::size_t rows = (facts.size() + 1) / 2;
  for (std::size_t i = 0; i < rows; ++i) {
    const bool twin = i + rows < facts.size();
    double high = write_fact(facts[i], place(), half, false);
    if (twin) high = std::max(high, write_fact(facts[i + rows], place(), half, false));
    need(high);
    const PaperPoint at = place();
    for (const std::size_t side : {0, 1}) {
      if (side == 1 && !twin) break;
      const double x = at.x + static_cast<double>(side) * (half + kBetweenHalves_mm * scale_);
      write_fact(facts[i + side * rows], {x, at.y}, half, true);
      maker().line({x, at.y - high}, {x + half, at.y - high}, LineClass::hatch);
    }
    pages_.skip(high);
  }
  skip(2.5);
}

DocumentPages::Grid DocumentPages::grid_of(const std::vector<DocumentColumn>& columns, double wide) const {
  Grid grid;
  for (const DocumentColumn& column : columns) {
    grid.heads.push_back(column.head);
    grid.right.push_back(column.right);
    grid.widths.push_back(column.share * wide);
  }
  return grid;
}

double DocumentPages::room_of(const Grid& grid, std::size_t column) const {
  const double pad = kCellPad_mm * scale_;
  return grid.widths[column] - pad - left_pad(grid.right, column, pad);
}

double DocumentPages::row_height(const Grid& grid, const Cells& cells, bool bold) const {
  const double size = kCell_mm * scale_;
  std::size_t most = 1;
  for (std::size_t i = 0; i < cells.size() && i < grid.widths.size(); ++i)
    most = std::max(most, lines_of(cells[i], size, room_of(grid, i), bold).size());
  return (static_cast<double>(most - 1) * kCellPitch + 1.75) * size;
}

void DocumentPages::write_row(const Grid& grid, const Cells& cells, PaperPoint top_left, bool bold) {
  const double size = kCell_mm * scale_;
  const double pad = kCellPad_mm * scale_;
  double x = top_left.x;
  for (std::size_t i = 0; i < grid.widths.size(); x += grid.widths[i++]) {
    if (i >= cells.size()) break;
    const bool right = grid.right[i];
    double y = top_left.y - 1.25 * size;
    for (const std::string& line : lines_of(cells[i], size, room_of(grid, i), bold)) {
      const PaperPoint base = {right ? x + grid.widths[i] - pad : x + left_pad(grid.right, i, pad), y};
      maker().write({line, base, size, right ? Anchor::right : Anchor::left, false, bold});
      y -= kCellPitch * size;
    }
  }
}

double DocumentPages::write_head(const Grid& grid, PaperPoint top_left) {
  double wide = 0;
  for (const double width : grid.widths) wide += width;
  write_row(grid, grid.heads, top_left, true);
  const double high = row_height(grid, grid.heads, true);
  maker().line({top_left.x, top_left.y - high}, {top_left.x + wide, top_left.y - high}, LineClass::outline);
  return high;
}

void DocumentPages::table(const std::vector<DocumentColumn>& columns, const std::vector<Cells>& rows,
                          bool together) {
  const Grid grid = grid_of(columns, wide());
  double first = row_height(grid, grid.heads, true);
  for (std::size_t i = 0; i < rows.size() && (together || i < kFirstRows); ++i)
    first += row_height(grid, rows[i], is_total(rows[i]));
  need(first);
  pages_.skip(write_head(grid, place()));
  for (const Cells& row : rows) {
    const bool total = is_total(row);
    const Cells cells = total ? without_sign(row) : row;
    const double high = row_height(grid, cells, total);
    if (need(high)) pages_.skip(write_head(grid, place()));
    const PaperPoint at = place();
    if (total) maker().line(at, {at.x + wide(), at.y}, LineClass::outline);
    write_row(grid, cells, at, total);
    maker().line({at.x, at.y - high}, {at.x + wide(), at.y - high}, LineClass::hatch);
    pages_.skip(high);
  }
  skip(2);
}

void DocumentPages::write_twins(const Grid& grid, const std::vector<Cells>& rows, double apart_mm) {
  const double row = 1.65 * kCell_mm * scale_;
  const std::size_t first = (rows.size() + 1) / 2;
  const PaperPoint top = place();
  double low = top.y;
  for (const std::size_t side : {0, 1}) {
    if (side == 1 && first == rows.size()) break;
    PaperPoint at = {top.x + static_cast<double>(side) * apart_mm, top.y};
    at.y -= write_head(grid, at);
    for (std::size_t i = side * first; i < (side == 0 ? first : rows.size()); ++i, at.y -= row) {
      Cells cells = rows[i];
      for (std::size_t k = 0; k < cells.size() && k < grid.widths.size(); ++k)
        cells[k] = shortened(clean_words(cells[k]), kCell_mm * scale_, room_of(grid, k));
      write_row(grid, cells, at, false);
      maker().line({at.x, at.y - row}, {at.x + apart_mm - kBetweenHalves_mm * scale_, at.y - row},
                   LineClass::hatch);
    }
    low = std::min(low, at.y);
  }
  pages_.skip(top.y - low);
}

void DocumentPages::twin_table(const std::vector<DocumentColumn>& columns, const std::vector<Cells>& rows) {
  const double half = (wide() - kBetweenHalves_mm * scale_) / 2;
  const Grid grid = grid_of(columns, half);
  const double row = 1.65 * kCell_mm * scale_;
  const double head = row_height(grid, grid.heads, true);
  for (std::size_t next = 0; next < rows.size();) {
    need(head + 3 * row);
    const auto fit = static_cast<std::size_t>(std::max(1.0, std::floor((pages_.room() - head) / row + 1e-6)));
    const std::size_t end = std::min(rows.size(), next + 2 * fit);
    write_twins(
        grid,
        {rows.begin() + static_cast<std::ptrdiff_t>(next), rows.begin() + static_cast<std::ptrdiff_t>(end)},
        half + kBetweenHalves_mm * scale_);
    next = end;
  }
  skip(2);
}

}  // namespace prismwright
