#pragma once

#include "geometry/clearances.h"

namespace prismwright {

/// Two metal parts that may touch, as the plan has it, and do not overlap: nothing that a maker need look at.
inline bool rests_by_design(const Clearance& pair) {
  return pair.kind == ClearanceKind::metal_metal && pair.needed_mm == 0 && pair.verdict == Verdict::clear;
}

/// Which of two clearances a maker should see first: clashes, the largest common volume leading; then the
/// smallest room over what is needed; parts that rest on each other by design last.
inline bool is_worse(const Clearance& a, const Clearance& b) {
  if (a.overlap_mm3 != b.overlap_mm3) return a.overlap_mm3 > b.overlap_mm3;
  if (rests_by_design(a) != rests_by_design(b)) return rests_by_design(b);
  return a.gap_mm - a.needed_mm < b.gap_mm - b.needed_mm;
}

}  // namespace prismwright
