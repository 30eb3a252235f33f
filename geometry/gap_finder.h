#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/base/progress.h"
#include "geometry/frame_bodies.h"
#include "geometry/rib_room.h"

namespace prismwright {

/// Two parts whose gap is wanted. Pairs of the same parts in the same places to each other, wherever they
/// stand in the lens, are worked out once.
struct GapWanted {
  TopoDS_Shape first;            ///< a prism, in the lens frame
  TopoDS_Shape second;           ///< a prism, a rib or a ring, in the lens frame
  const RibPlan* rib = nullptr;  ///< set where the second is a rib
  bool round = false;            ///< the second is round about the lens axis: a turn leaves it as it is
  std::string mark;              ///< of the first, for reports
};

/// What was found for one wanted pair, lens frame. Prism to rib: end and side apart; else all in `side`.
struct GapsFound {
  std::optional<SolidGap> end;
  std::optional<SolidGap> side;
};

/// Works out the gaps of all wanted pairs on two threads, in their order. The first trouble ends the work; a
/// stopped work is a Problem of that kind.
Outcome<std::vector<GapsFound>> find_gaps(const std::vector<GapWanted>& wanted, const Progress& progress);

}  // namespace prismwright
