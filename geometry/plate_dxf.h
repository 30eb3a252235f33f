#pragma once

#include <string>
#include <vector>

#include "core/frame/nest.h"

namespace prismwright {

/// A flat part as DXF, R12, 1:1 in mm, in the plate's own frame seen from the front. Layers: CUT (outline and
/// everything cut right through, closed polylines with exact arcs), POCKET (blind pockets, the same way), HOLE
/// (circles of the diameter that is drilled; a sunk head is told in the note), ENGRAVE (the mark in
/// single-stroke letters) and NOTE (what a shop must know, below the plate). Outlines run anticlockwise, what
/// is cut out of them clockwise.
///
/// `marks` are those of all alike plates, the part's own first; the first is engraved. Where no letters of 2 mm
/// find room, the note says so.
std::string plate_dxf(const FlatPart& part, const std::vector<std::string>& marks);

/// A sheet with its plates where they lie, each with its own mark; the sheet's edge lies on the layer SHEET.
/// `flats` is the list that the nest was made of.
std::string nest_dxf(const NestSheet& sheet, const std::vector<FlatPart>& flats, const std::string& title);

}  // namespace prismwright
