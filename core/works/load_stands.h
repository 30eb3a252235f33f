#pragma once

#include <optional>
#include <vector>

#include "core/works/load_plan.h"

namespace prismwright {

/// One way for a mould to stand in the vessel.
struct Stand {
  Upward upward = Upward::height;
  double high_mm = 0;
  double long_mm = 0;   ///< the longer of its level edges
  double short_mm = 0;  ///< the other one
};

/// The ways in which a mould fits into the vessel by itself.
std::vector<Stand> stands_of(const LoadPiece& piece, const WorksSettings& works);

/// Of those no higher than `high_mm` the one that covers the least ground.
std::optional<Stand> least_ground(const std::vector<Stand>& stands, double high_mm);

/// What a mould that fits in no way would need: the vessel that is the least larger, in the greater of its two
/// sizes.
UnfitPiece unfit_piece(const LoadPiece& piece, std::size_t index, const WorksSettings& works);

}  // namespace prismwright
