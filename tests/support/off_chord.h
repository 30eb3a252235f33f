#pragma once

#include <algorithm>

#include "core/optics/profile.h"

namespace prismwright {

/// How far a face stands off its chord, positive out of the glass, at a place along the chord: by a fine
/// polygon of the face, within 2e-6 mm.
inline double off_chord(const Face& face, double along_mm) {
  const std::vector<SectionPoint> points = points_along(face, 1e-6);
  const SectionOffset chord = points.back() - points.front();
  const auto along = [&](SectionPoint p) { return dot(p - points.front(), chord) / chord.length(); };
  const auto after = std::ranges::find_if(points, [&](SectionPoint p) { return along(p) >= along_mm; });
  if (after == points.begin() || after == points.end()) return 0;
  const SectionPoint before = *(after - 1);
  const SectionPoint p = between(before, *after, (along_mm - along(before)) / (along(*after) - along(before)));
  return cross(p - points.front(), chord) / chord.length();
}

}  // namespace prismwright
