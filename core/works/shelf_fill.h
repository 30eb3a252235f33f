#pragma once

#include <cstddef>
#include <vector>

namespace prismwright {

/// A box as it stands on a shelf, seen from above.
struct FloorItem {
  double long_mm = 0;   ///< the longer level edge
  double short_mm = 0;  ///< the other one
  double value = 1;     ///< what having it on the shelf is worth
  double urgency = 0;   ///< one of the ways of filling takes those of the greatest first
};

/// Where a box stands; its edges lie along x and y.
struct FloorSpot {
  std::size_t item = 0;  ///< index into the list that was laid out
  double x_mm = 0;       ///< middle, from the middle of the shelf
  double y_mm = 0;
  double wide_mm = 0;  ///< along x
  double long_mm = 0;  ///< along y
};

/// Lays boxes out inside a circle, no nearer to each other than `spacing_mm` along x or y: the worthiest of
/// several ways of filling it row by row, from the middle outward and from one side to the other. The first
/// item is always among them where it fits by itself.
std::vector<FloorSpot> fill_floor(const std::vector<FloorItem>& items, double radius_mm, double spacing_mm);

}  // namespace prismwright
