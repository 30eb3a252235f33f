#pragma once

#include <vector>

#include "core/drawing/drawing.h"

namespace prismwright {

/// Parallel lines inside a closed polygon on paper, `apart_mm` from each other, at 45 degrees rising (or
/// falling). Lines shorter than `least_mm` are left out.
std::vector<Stroke> hatch_lines(const std::vector<PaperPoint>& polygon, double apart_mm, bool falling,
                                double least_mm = 0.3);

}  // namespace prismwright
