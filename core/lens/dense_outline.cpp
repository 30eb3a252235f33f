#include "core/lens/dense_outline.h"

#include <algorithm>
#include <cmath>

namespace prismwright {

std::vector<SectionPoint> dense_outline(const Profile& profile, double chord_mm, double longest_mm) {
  const auto corners = polygon_of(profile, chord_mm);
  std::vector<SectionPoint> outline;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const SectionPoint from = corners[i];
    const SectionPoint to = corners[(i + 1) % corners.size()];
    const int pieces = std::max(1, static_cast<int>(std::ceil(distance(from, to) / longest_mm)));
    for (int k = 0; k < pieces; ++k) outline.push_back(between(from, to, static_cast<double>(k) / pieces));
  }
  return outline;
}

}  // namespace prismwright
