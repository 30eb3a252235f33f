#pragma once

#include <string>

namespace prismwright {

/// What a maker read on the board of the laser bench for one prism. Readings are only ever added: a correction
/// is a new one, and the last reading of a prism is the one that counts.
struct BenchReading {
  long long number = 0;  ///< given by the book, rising
  std::string when_utc;  ///< ISO 8601, given by the book
  std::string mark;
  double height_mm = 0;  ///< of the spot over where it should fall
  double aside_mm = 0;   ///< of the spot to the left of where it should fall, looking seaward from the focus
  double board_mm = 0;   ///< distance of the board from the focus when it was read
  std::string by;        ///< who read it; may be empty
  std::string note;
};

}  // namespace prismwright
