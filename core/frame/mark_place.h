#pragma once

#include <optional>

#include "core/drawing/engraved_letters.h"
#include "core/frame/frame_parts.h"
#include "core/frame/plate_polygons.h"

namespace prismwright {

inline constexpr double kMarkClear_mm = 1;  ///< between letters and edges, holes and pockets

/// Where a mark is best engraved on the front face of a plate: at least kMarkClear_mm off every edge, hole,
/// sunk head in the front face and pocket; as tall as fits of 5, 4, 3, 2.5 and 2 mm; level where there is room,
/// else upright, else turned by 15 deg steps; the roomiest place of that kind. Blank where even the smallest
/// letters find no place.
std::optional<EngravedMark> place_of_mark(const FlatPart& part, const std::string& words);

/// The front face of a plate less edges, holes and pockets, shrunk by `clear_mm` at least.
PlateRegion clear_face(const FlatPart& part, double clear_mm);

}  // namespace prismwright
