#pragma once

#include <optional>

#include <gp_Trsf.hxx>

#include "core/frame/frame_parts.h"
#include "geometry/solid_gap.h"

namespace prismwright {

/// A screw, dowel or pin that fills a hole of a plate: `to_plate` takes its own frame (along +Z from the
/// origin) to the plate's. Where the two share an axis within 1e-7 mm and the hole with its sunk cone is
/// nowhere narrower than the part, by more than 1e-7 mm, they have nothing in common, as the plate has no brass
/// outside its depth; where it is also somewhere no more than kTouching_mm wider, they touch. Then a gap of 0
/// without common volume, points in the plate's frame, the part's first; else blank: nothing is said.
std::optional<SolidGap> touch_in_hole(const RoundPart& round, const FlatPart& plate, const gp_Trsf& to_plate);

}  // namespace prismwright
