#pragma once

#include <string_view>
#include <vector>

namespace prismwright {

/// An order and the values a new lensbook of that order starts from.
struct Order {
  std::string_view key;    ///< "1", "3.5", "hyper-radial"
  std::string_view words;  ///< "first order"
  double focal_mm;         ///< published: Encyclopaedia Britannica, 11th ed. (1911), vol. 16, Table II p. 639
  double edge_mm;          ///< starting value, common practice scaled from the first order's 10 mm
  double reflecting_chord_mm;  ///< starting value; first order 80-90 mm: Stevenson (1848), others scaled
};

const std::vector<Order>& orders();
/// The order with this key or these words ("4", "fourth", "fourth order", "4th"), or null.
const Order* find_order(std::string_view text);

}  // namespace prismwright
