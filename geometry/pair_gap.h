#pragma once

#include <optional>
#include <string>

#include <gp_Trsf.hxx>

#include "geometry/measured_part.h"
#include "geometry/solid_gap.h"

namespace prismwright {

/// What was found for a pair. Prism to a plate with blind pockets: the gap at the prism's end apart from that
/// at its sides; else all in `side`. Both blank: farther apart than was asked.
struct GapsFound {
  std::optional<SolidGap> end;
  std::optional<SolidGap> side;
};

/// A word that is equal for pairs of the same solids in the same places to each other.
std::string pair_word(const MeasuredPart& first, const MeasuredPart& second);

/// The gap of two parts, in the frame in which the first was made. In closed form where flats face each other
/// or sections turn about one line; where one is a flat or a turned part, by the room round it (plate_room.h,
/// turned_part.h); else by the kernel. Never too small; too great by 2e-4 mm at most, beside the 1e-6 mm that
/// arcs leave a true curve by, as far as the kernel's own distance is right. A screw that fills its hole
/// touches it in closed form (hole_fit.h). Parts that meet have gap 0 and their common volume. Gaps over
/// `no_farther_mm` may be left out. Throws Standard_Failure.
GapsFound pair_gap(const MeasuredPart& first, const MeasuredPart& second, double no_farther_mm);

/// The gap with sunk cones and bores filled, lens frame; of parts that meet it is 0. Blank where it is over
/// `no_farther_mm`. Quick: for a part on its way. Throws Standard_Failure.
std::optional<SolidGap> gap_filled(const MeasuredPart& first, const MeasuredPart& second, double no_farther_mm);

/// The same with the places moved.
GapsFound moved(GapsFound gaps, const gp_Trsf& place);

}  // namespace prismwright
