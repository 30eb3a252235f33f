#pragma once

#include <string>

namespace prismwright {

/// The glass of one zone in the whole lens: all its pieces in all panels, as they are cut for the frame.
struct ZoneGlass {
  std::string mark;
  int pieces = 0;
  double volume_mm3 = 0;
  double largest_mm3 = 0;  ///< of its largest piece: the greatest casting
};

}  // namespace prismwright
