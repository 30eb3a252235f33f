#pragma once

#include <vector>

#include "geometry/despatch/ready_piece.h"

namespace prismwright {

/// The drawings of the frame: a piece for every shape of part, the nested sheets, the order of assembly. None
/// for a lens without a frame.
std::vector<ReadyPiece> frame_papers(LensShop& shop);

}  // namespace prismwright
