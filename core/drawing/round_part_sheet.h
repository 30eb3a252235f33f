#pragma once

#include <string>
#include <vector>

#include "core/drawing/house_words.h"
#include "core/frame/frame_parts.h"

namespace prismwright {

/// A turned pin or tube, to scale: from the side, lying, its head on the left, its bore dashed, and from its
/// end; length, diameters, head; and a column that says what it is and names every mark. Threads are not drawn.
///
/// `marks`: of all alike parts, the part's own first; empty: its own alone.
Drawing round_part_sheet(const RoundPart& part, const std::vector<std::string>& marks, const HouseWords& words);

}  // namespace prismwright
