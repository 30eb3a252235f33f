#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/drawing/house_words.h"
#include "core/frame/frame_parts.h"

namespace prismwright {

/// A bar turned about its panel's axis, to scale: seen from the sea, with its length and height over all, the
/// greatest and the least radius, and its bores dashed; below, its section in the plane of the axis, at a scale
/// of its own, with lettered corners; and a column with mass, ends, every corner's distance along the axis,
/// radius and edge from end to end, the bores, and every mark.
///
/// `marks`: of all alike bars, the bar's own first; empty: its own alone. `mass_g`: of one, where it is known.
/// An axis that dips is drawn as if it were level, and the column says by how much it dips.
Drawing turned_bar_sheet(const TurnedBar& bar, const std::vector<std::string>& marks,
                         std::optional<double> mass_g, const HouseWords& words);

}  // namespace prismwright
