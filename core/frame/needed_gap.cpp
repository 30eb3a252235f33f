#include "core/frame/needed_gap.h"

#include <algorithm>
#include <cmath>

namespace prismwright {

double expansion_per_k(std::string_view material) {
  if (material == "crown") return 9e-6;
  if (material == "n-bk7") return 7.1e-6;
  return 7e-5;
}

double needed_gap_mm(double extent_mm, std::string_view material, double heat_range_k) {
  return extent_mm / 2 * std::abs(expansion_per_k(material) - kBrassExpansion_per_k) * heat_range_k;
}

double section_extent_mm(const Profile& profile) {
  const auto points = polygon_of(profile, 0.1);
  double most = 0;
  for (const SectionPoint a : points) {
    for (const SectionPoint b : points) most = std::max(most, distance(a, b));
  }
  return most;
}

}  // namespace prismwright
