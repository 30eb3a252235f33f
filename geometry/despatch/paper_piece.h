#pragma once

#include <functional>
#include <string>

#include "geometry/despatch/piece_key.h"
#include "geometry/despatch/ready_piece.h"

namespace prismwright {

/// A piece that is paper, before it is drawn.
struct PaperWords {
  DespatchGroup group = DespatchGroup::drawings;
  std::string name;
  std::string words;
  std::string stem;  ///< of its files in the pack: "drawings/section"
  bool svg = false;  ///< an SVG file for every sheet too
};

/// Raised when the writers of PDF and SVG come to give other bytes.
inline constexpr int kPaperFilesFormat = 1;

/// The piece of a drawing. `undated` is the drawing without date and revision and without what takes long to
/// make: it goes into the key with all its lines and words; `key` holds what else the drawing comes from. Where
/// it is refused, the piece is withheld with that sentence. `paper` draws it whole.
ReadyPiece paper_piece(const PaperWords& words, PieceKey key, const Outcome<Drawing>& undated,
                       std::function<Outcome<Drawing>(const Progress&)> paper);

}  // namespace prismwright
