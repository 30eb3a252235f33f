#pragma once

#include <vector>

#include "core/frame/plate_polygons.h"

namespace prismwright {

/// How deep places of a plane lie in a region that is bounded by closed loops (even-odd: holes may run either
/// way). Cells of a grid keep what is near them, worked out when first asked: one thread at a time.
class LoopField {
 public:
  LoopField(const PlateRegion& loops, double cell_mm);

  /// Distance from the region's edge, mm: negative within, positive outside. Never more than the true distance
  /// to the edge; exact within about a cell of it.
  [[nodiscard]] double signed_mm(PlatePoint p) const;
  [[nodiscard]] const PlateExtent& extent() const { return extent_; }

 private:
  struct Edge {
    PlatePoint from;
    PlatePoint to;
  };
  struct Cell {
    int cells_to_edge = -1;  ///< steps to the nearest cell that an edge runs through, corners counting as sides
    bool known = false;      ///< what follows is worked out when first asked
    bool inside = false;     ///< its middle
    std::vector<int> edges;  ///< of which one is nearest to any place of the cell, where an edge is near
  };
  void lay_grid();
  void lay_edge(int number);
  void count_steps();
  [[nodiscard]] const Cell& cell_at(int column, int row) const;
  [[nodiscard]] std::vector<int> edges_round(int column, int row) const;
  [[nodiscard]] bool is_inside(PlatePoint p, int row) const;
  [[nodiscard]] PlatePoint middle(int column, int row) const;
  [[nodiscard]] std::size_t place(int column, int row) const {
    return static_cast<std::size_t>(row) * columns_ + column;
  }

  std::vector<Edge> edges_;
  PlateExtent extent_;
  double cell_mm_;
  int columns_ = 0;
  int rows_ = 0;
  std::vector<std::vector<int>> in_row_;   ///< edges that reach into each row's heights
  std::vector<std::vector<int>> through_;  ///< edges that run through each cell
  mutable std::vector<Cell> cells_;
};

}  // namespace prismwright
