#pragma once

#include <vector>

#include "core/frame/plate_chain.h"

namespace prismwright {

/// A flat ring about the origin, cut by two upright lines left and right of it; mm.
struct CutRing {
  double inner_mm = 0;  ///< 0: a disc
  double outer_mm = 0;
  double left_u = 0;   ///< not positive
  double right_u = 0;  ///< not negative
};

/// Outlines of what is left of the ring: one, two pieces where both lines cut through the hole, or the outer
/// outline anticlockwise and the hole clockwise.
std::vector<PlateChain> whole_ring(const CutRing& ring);

/// The same of its upper part, from the height `floor_v` (not negative) upwards; nothing where that lies above
/// the ring.
std::vector<PlateChain> upper_half(const CutRing& ring, double floor_v);

/// Turned upside down, still anticlockwise.
std::vector<PlateChain> upside_down(const std::vector<PlateChain>& loops);

}  // namespace prismwright
