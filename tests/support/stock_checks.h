#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include "core/optics/profile.h"

namespace prismwright {

/// The nearest place of a face, found on chords that leave it by no more than 1e-8 mm.
struct FaceFoot {
  double away_mm = std::numeric_limits<double>::infinity();
  bool within = false;  ///< not at an end of the face
};

inline FaceFoot foot_on(const std::vector<SectionPoint>& chain, SectionPoint p) {
  FaceFoot foot;
  for (std::size_t i = 0; i + 1 < chain.size(); ++i) {
    const SectionOffset step = chain[i + 1] - chain[i];
    const double share = std::clamp(dot(p - chain[i], step) / dot(step, step), 0.0, 1.0);
    const double away = distance(p, chain[i] + share * step);
    if (away >= foot.away_mm) continue;
    foot.away_mm = away;
    foot.within = !(i == 0 && share <= 0) && !(i + 2 == chain.size() && share >= 1);
  }
  return foot;
}

/// Whether a place lies within a closed polygon (its first place may come again at the end): by how often a
/// level ray from it crosses.
inline bool lies_within(const std::vector<SectionPoint>& polygon, SectionPoint p) {
  bool inside = false;
  for (std::size_t i = 0, j = polygon.size() - 1; i < polygon.size(); j = i++) {
    const SectionPoint a = polygon[i];
    const SectionPoint b = polygon[j];
    if ((a.z > p.z) == (b.z > p.z)) continue;
    if (p.r < a.r + (p.z - a.z) / (b.z - a.z) * (b.r - a.r)) inside = !inside;
  }
  return inside;
}

}  // namespace prismwright
