#include "core/drawing/spread_heights.h"

#include <algorithm>

namespace prismwright {

// Pool of adjacent violators.
std::vector<double> spread_heights(const std::vector<double>& wished, double pitch, double low, double high) {
  if (wished.empty()) return {};
  struct Run {
    double mean;
    int count;
  };
  std::vector<Run> runs;
  for (std::size_t i = 0; i < wished.size(); ++i) {
    runs.push_back({wished[i] + pitch * static_cast<double>(i), 1});
    while (runs.size() > 1 && runs[runs.size() - 2].mean < runs.back().mean) {
      const Run last = runs.back();
      runs.pop_back();
      Run& before = runs.back();
      before.mean = (before.mean * before.count + last.mean * last.count) / (before.count + last.count);
      before.count += last.count;
    }
  }
  const double lowest = low + pitch * static_cast<double>(wished.size() - 1);
  std::vector<double> heights;
  for (const Run& run : runs) {
    for (int k = 0; k < run.count; ++k) {
      const double height = std::clamp(run.mean, std::min(lowest, high), high);
      heights.push_back(height - pitch * static_cast<double>(heights.size()));
    }
  }
  return heights;
}

}  // namespace prismwright
