#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/drawing/drawing.h"
#include "core/frame/nest.h"

namespace prismwright {

/// What the caller says of the drawing of a part; everything else comes from the part.
struct PartSheetWords {
  std::string title;               ///< of the lens
  std::string date;                ///< YYYY-MM-DD
  std::vector<std::string> marks;  ///< of all alike parts, the part's own first; empty: its own alone
  std::optional<Paper> paper;      ///< blank: A4 where it then stands at 1:5 or larger, else A3
  bool inches = false;             ///< lengths are written in inches
};

/// A flat part seen from the front, drawn to scale: outline, openings, holes with letters, pockets hatched, the
/// engraved mark, width and height over all, and a column that says what it is, its thickness, mass, least
/// inside radius, pocket depths and holes. Texts never cover each other, nor the border.
///
/// The scale is the largest of the drawing scales (10:1 to 1:100) at which it fits the paper.
Sheet part_sheet(const FlatPart& part, const PartSheetWords& words);

/// One sheet of a nest, drawn to scale, its plates numbered; a column names them. `flats` is the list that the
/// nest was made of, `sheet` counts from 0 and must be in the nest.
Sheet nest_sheet(const Nest& nest, std::size_t sheet, const std::vector<FlatPart>& flats,
                 const PartSheetWords& words);

}  // namespace prismwright
