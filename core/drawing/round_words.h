#pragma once

#include <string>
#include <vector>

#include "core/drawing/arc_chain.h"
#include "core/drawing/lengths.h"

namespace prismwright {

/// "straight", "arc, full" (it bulges out of the glass) or "arc, hollow". Outlines are walked with the glass on
/// the left: an arc that turns left is full.
std::string round_words(const ChainPiece& piece);

/// Cells of a table: radius, r and z of the centre; none for a straight line.
void add_round(std::vector<std::string>& cells, const ChainPiece& piece, LengthWords lengths);

/// How far the one arc departs from a true curve, to 0.0001 mm or 0.00001 in: it may be as near as that.
std::string departure_words(double mm, LengthWords lengths);

}  // namespace prismwright
