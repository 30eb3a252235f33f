#include "geometry/despatch/paper_piece.h"

#include <utility>

#include "geometry/despatch/despatch_keys.h"
#include "geometry/despatch/piece_files.h"

namespace prismwright {

ReadyPiece paper_piece(const PaperWords& words, PieceKey key, const Outcome<Drawing>& undated,
                       std::function<Outcome<Drawing>(const Progress&)> paper) {
  ReadyPiece ready;
  ready.piece = {words.group, words.name, words.words, {}, true, {}};
  if (undated) {
    add_drawing(key, *undated);
  } else {
    ready.piece.withheld = undated.problem().text;
  }
  key << kPaperFilesFormat;
  ready.piece.key = key.text();
  ready.paper = std::move(paper);
  ready.write = [draw = ready.paper, stem = words.stem, svg = words.svg](
                    const std::string& folder, const Progress& progress) -> Outcome<std::vector<std::string>> {
    const auto drawing = draw(progress);
    if (!drawing) return drawing.problem();
    PieceFiles files(folder);
    files.put_drawing(stem, *drawing, svg);
    return files.paths();
  };
  return ready;
}

}  // namespace prismwright
