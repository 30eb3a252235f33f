#pragma once

#include <vector>

#include "core/works/load_plan.h"

namespace prismwright {

/// Fewest fillings that any plan of these pieces can have. Pieces that fit in no load must be left out first.
///
/// Kinds are parted by thickness into groups of which no two can share a load; each group needs as many as the
/// greater of its room (each mould with the spacing that it must keep round it, in the vessel widened by as
/// much) and its moulds (each fills once in a load). The parting that gives the most counts.
int least_loads(const std::vector<LoadPiece>& pieces, const WorksSettings& works);

/// Fillings that a kind needs for its moulds alone.
int rounds_of(const LoadPiece& piece);

/// No vessel of these settings takes more moulds of this kind, by room alone.
int most_moulds(const LoadPiece& piece, const WorksSettings& works);

}  // namespace prismwright
