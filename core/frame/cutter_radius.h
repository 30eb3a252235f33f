#pragma once

#include "core/frame/frame_parts.h"
#include "core/frame/plate_chain.h"

namespace prismwright {

/// Radius of the largest round cutter that cuts the chain as it is drawn, leaving nowhere more than a hundredth
/// of a millimetre: a kink of a degree or two, or a short arc between lines that hardly turn, does not ask for
/// a smaller one. 0 where only a cutter under 0.1 mm would do: a sharp corner. Infinite where the chain has no
/// inside corners. Never less than least_inside_radius_mm; within 0.1 % below the truth. Corners alone are
/// looked at, each for itself: not whether a throat is too narrow for the cutter.
double cutter_radius_mm(const PlateChain& chain, CutSide side);

/// The same of a whole plate: its outline, openings and pockets; holes do not count.
double cutter_radius_mm(const FlatPart& part);

}  // namespace prismwright
