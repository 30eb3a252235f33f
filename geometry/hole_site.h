#pragma once

#include <cstddef>
#include <optional>

#include "core/frame/frame_parts.h"

namespace prismwright {

/// Where a round hole lies in its plate.
struct HoleSite {
  double top_mm = 0;  ///< depth at which it opens towards the front: a pocket's floor, or the front
  std::optional<std::size_t> pocket;  /// index of the pocket in whose floor it opens
  bool clear = true;                  ///< touches no edge and no other hole, so that it needs no cut
};
HoleSite site_of(const FlatPart& part, const PlateHole& hole);

/// Depth of the cone of a sunk hole, mm (90 deg); no deeper than the brass at the hole.
double sink_depth_mm(const PlateHole& hole, double top_mm);

/// How far a place lies from the nearest place of a chain, mm.
double distance_mm(const PlateChain& chain, PlatePoint p);
/// Whether a place lies within an anticlockwise chain.
bool is_within(const PlateChain& chain, PlatePoint p);

}  // namespace prismwright
