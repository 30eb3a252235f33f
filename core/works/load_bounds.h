#pragma once

#include <vector>

#include "core/works/load_plan.h"

namespace prismwright {

/// Fewest fillings that any plan of these pieces can have. Pieces that fit in no load must be left out first.
///
/// The greater of two: by room, each mould with the spacing that it must keep round it, in the vessel widened
/// by as much; and by moulds and thickness, kinds too unlike to share a load, each filled as often as its
/// moulds make it.
int least_loads(const std::vector<LoadPiece>& pieces, const WorksSettings& works);

/// Fillings that a kind needs for its moulds alone.
int rounds_of(const LoadPiece& piece);

}  // namespace prismwright
