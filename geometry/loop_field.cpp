#include "geometry/loop_field.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace prismwright {
namespace {

constexpr int kMargin = 2;  // cells beyond the loops
constexpr int kReach = 3;
constexpr double kMostCells = 4e6;

// Roots of squares rather than std::hypot, here and below: it takes most of the time otherwise.
double root_of_squares(double u, double v) { return std::sqrt(u * u + v * v); }

double square_to_segment(PlatePoint p, PlatePoint a, PlatePoint b) {
  const double du = b.u - a.u;
  const double dv = b.v - a.v;
  const double square = du * du + dv * dv;
  const double along = square > 0 ? ((p.u - a.u) * du + (p.v - a.v) * dv) / square : 0;
  const double share = std::clamp(along, 0.0, 1.0);
  const double u = p.u - a.u - share * du;
  const double v = p.v - a.v - share * dv;
  return u * u + v * v;
}

double outside_mm(const PlateExtent& box, PlatePoint p) {
  const double u = std::max({box.low.u - p.u, p.u - box.high.u, 0.0});
  const double v = std::max({box.low.v - p.v, p.v - box.high.v, 0.0});
  return root_of_squares(u, v);
}

}  // namespace

LoopField::LoopField(const PlateRegion& loops, double cell_mm) : extent_(extent_of(loops)), cell_mm_(cell_mm) {
  for (const PlateOutline& loop : loops) {
    for (std::size_t i = 0; i < loop.size(); ++i) edges_.push_back({loop[i], loop[(i + 1) % loop.size()]});
  }
  lay_grid();
  for (std::size_t i = 0; i < edges_.size(); ++i) lay_edge(static_cast<int>(i));
  count_steps();
}

void LoopField::lay_grid() {
  const double width = extent_.high.u - extent_.low.u;
  const double height = extent_.high.v - extent_.low.v;
  cell_mm_ = std::max(cell_mm_, std::sqrt(width * height / kMostCells));
  columns_ = static_cast<int>(std::ceil(width / cell_mm_)) + 2 * kMargin;
  rows_ = static_cast<int>(std::ceil(height / cell_mm_)) + 2 * kMargin;
  cells_.resize(static_cast<std::size_t>(columns_) * rows_);
  through_.resize(cells_.size());
  in_row_.resize(rows_);
}

// Piece by piece no longer than a cell: the cells of a piece's box are those that it may run through.
void LoopField::lay_edge(int number) {
  const auto& [from, to] = edges_[number];
  const auto row_of = [&](double v) {
    return std::clamp(static_cast<int>(std::floor((v - extent_.low.v) / cell_mm_)) + kMargin, 0, rows_ - 1);
  };
  const auto column_of = [&](double u) {
    return std::clamp(static_cast<int>(std::floor((u - extent_.low.u) / cell_mm_)) + kMargin, 0, columns_ - 1);
  };
  const auto put = [&](std::vector<int>& list) {
    if (list.empty() || list.back() != number) list.push_back(number);
  };
  for (int row = row_of(std::min(from.v, to.v)); row <= row_of(std::max(from.v, to.v)); ++row)
    put(in_row_[row]);
  const int pieces =
      std::max(1, static_cast<int>(std::ceil(root_of_squares(to.u - from.u, to.v - from.v) / cell_mm_)));
  for (int k = 0; k < pieces; ++k) {
    const double near = static_cast<double>(k) / pieces;
    const double far = static_cast<double>(k + 1) / pieces;
    const PlatePoint a{from.u + near * (to.u - from.u), from.v + near * (to.v - from.v)};
    const PlatePoint b{from.u + far * (to.u - from.u), from.v + far * (to.v - from.v)};
    for (int row = row_of(std::min(a.v, b.v)); row <= row_of(std::max(a.v, b.v)); ++row) {
      for (int column = column_of(std::min(a.u, b.u)); column <= column_of(std::max(a.u, b.u)); ++column) {
        put(through_[place(column, row)]);
      }
    }
  }
}

// Steps from cell to cell, outward from all cells with an edge at once.
void LoopField::count_steps() {
  std::vector<std::pair<int, int>> queue;
  for (int row = 0; row < rows_; ++row) {
    for (int column = 0; column < columns_; ++column) {
      if (through_[place(column, row)].empty()) continue;
      cells_[place(column, row)].cells_to_edge = 0;
      queue.emplace_back(column, row);
    }
  }
  for (std::size_t i = 0; i < queue.size(); ++i) {
    const auto [column, row] = queue[i];
    const int next = cells_[place(column, row)].cells_to_edge + 1;
    for (int r = std::max(0, row - 1); r <= std::min(rows_ - 1, row + 1); ++r) {
      for (int c = std::max(0, column - 1); c <= std::min(columns_ - 1, column + 1); ++c) {
        Cell& cell = cells_[place(c, r)];
        if (cell.cells_to_edge >= 0) continue;
        cell.cells_to_edge = next;
        queue.emplace_back(c, r);
      }
    }
  }
}

PlatePoint LoopField::middle(int column, int row) const {
  return {extent_.low.u + (column - kMargin + 0.5) * cell_mm_,
          extent_.low.v + (row - kMargin + 0.5) * cell_mm_};
}

bool LoopField::is_inside(PlatePoint p, int row) const {
  bool inside = false;
  for (const int i : in_row_[row]) {
    const auto& [a, b] = edges_[i];
    if ((a.v > p.v) == (b.v > p.v)) continue;
    if (p.u < a.u + (p.v - a.v) * (b.u - a.u) / (b.v - a.v)) inside = !inside;
  }
  return inside;
}

// An edge in a next cell lies within two diagonals of any place of this one: within three cells.
std::vector<int> LoopField::edges_round(int column, int row) const {
  std::vector<int> edges;
  for (int r = std::max(0, row - kReach); r <= std::min(rows_ - 1, row + kReach); ++r) {
    for (int c = std::max(0, column - kReach); c <= std::min(columns_ - 1, column + kReach); ++c) {
      const auto& here = through_[place(c, r)];
      edges.insert(edges.end(), here.begin(), here.end());
    }
  }
  std::sort(edges.begin(), edges.end());
  edges.erase(std::unique(edges.begin(), edges.end()), edges.end());
  return edges;
}

const LoopField::Cell& LoopField::cell_at(int column, int row) const {
  Cell& cell = cells_[place(column, row)];
  if (cell.known) return cell;
  const PlatePoint centre = middle(column, row);
  cell.known = true;
  cell.inside = is_inside(centre, row);
  if (cell.cells_to_edge > 1) return cell;
  const std::vector<int> round = edges_round(column, row);
  double least = std::numeric_limits<double>::infinity();
  std::vector<double> squares;
  for (const int i : round) {
    squares.push_back(square_to_segment(centre, edges_[i].from, edges_[i].to));
    least = std::min(least, squares.back());
  }
  const double reach = std::sqrt(least) + std::sqrt(2.0) * cell_mm_;
  for (std::size_t i = 0; i < round.size(); ++i) {
    if (squares[i] <= reach * reach) cell.edges.push_back(round[i]);
  }
  return cell;
}

double LoopField::signed_mm(PlatePoint p) const {
  const double column = (p.u - extent_.low.u) / cell_mm_ + kMargin;
  const double row = (p.v - extent_.low.v) / cell_mm_ + kMargin;
  if (!(column >= 0 && row >= 0 && column < columns_ && row < rows_)) return outside_mm(extent_, p);
  const int on_row = static_cast<int>(row);
  const Cell& cell = cell_at(static_cast<int>(column), on_row);
  if (cell.cells_to_edge > 1) {
    const double least = (cell.cells_to_edge - 1) * cell_mm_;
    return cell.inside ? -least : least;
  }
  double least = std::numeric_limits<double>::infinity();
  for (const int i : cell.edges) least = std::min(least, square_to_segment(p, edges_[i].from, edges_[i].to));
  return is_inside(p, on_row) ? -std::sqrt(least) : std::sqrt(least);
}

}  // namespace prismwright
