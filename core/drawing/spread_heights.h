#pragma once

#include <vector>

namespace prismwright {

/// Heights for a column of words, as near to the wished ones (from the top down, falling) as a least pitch
/// allows: neighbours that would meet are moved together by the same mean. All between `low` and `high` where
/// they fit there; else they begin at `high` and go on below `low`.
std::vector<double> spread_heights(const std::vector<double>& wished, double pitch, double low, double high);

}  // namespace prismwright
