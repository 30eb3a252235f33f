#pragma once

#include <functional>
#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/base/progress.h"
#include "core/drawing/drawing.h"
#include "geometry/despatch/despatch_desk.h"

namespace prismwright {

/// A piece together with what makes it. The functions may outlive neither the desk nor its shop.
struct ReadyPiece {
  DespatchPiece piece;
  /// Writes its files into the pack's top folder and answers their paths in it.
  std::function<Outcome<std::vector<std::string>>(const std::string& folder, const Progress&)> write;
  std::function<Outcome<Drawing>(const Progress&)> paper = {};  ///< of a piece that is paper
};

/// Everything of one book by its groups, in their order.
class LensShop;
using ReadyPieces = Outcome<std::vector<ReadyPiece>>;
ReadyPieces prism_pieces(LensShop& shop);    ///< solids_pieces.cpp
ReadyPieces panel_pieces(LensShop& shop);    ///< solids_pieces.cpp
ReadyPieces lens_pieces(LensShop& shop);     ///< solids_pieces.cpp
ReadyPieces frame_pieces(LensShop& shop);    ///< frame_pieces.cpp
ReadyPieces cutting_pieces(LensShop& shop);  ///< cutting_pieces.cpp
ReadyPieces master_pieces(LensShop& shop);
ReadyPieces drawing_pieces(LensShop& shop);
ReadyPieces list_pieces(LensShop& shop);
ReadyPieces light_pieces(LensShop& shop);
ReadyPieces record_pieces(LensShop& shop);
ReadyPieces dossier_pieces(LensShop& shop);   ///< owner_pieces.cpp
ReadyPieces estimate_pieces(LensShop& shop);  ///< owner_pieces.cpp
ReadyPieces picture_pieces(LensShop& shop);

}  // namespace prismwright
