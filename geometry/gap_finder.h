#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/base/progress.h"
#include "geometry/rib_room.h"
#include "geometry/turned_part.h"

namespace prismwright {

/// Two parts whose gap is wanted, lens frame. Pairs of the same parts in the same places to each other,
/// wherever they stand in the lens, are worked out once.
struct GapWanted {
  std::string mark;                          ///< of the first, for reports
  TopoDS_Shape first;                        ///< a prism
  TopoDS_Shape second;                       ///< a prism, a rib or a ring
  const RibPlan* rib = nullptr;              ///< set where the second is a rib
  std::shared_ptr<const TurnedPart> turned;  ///< set where the second can be measured by its turned section
};

/// What was found for one wanted pair, lens frame. Prism to rib: end and side apart; else all in `side`.
struct GapsFound {
  std::optional<SolidGap> end;
  std::optional<SolidGap> side;
};

/// Works out the gaps of all wanted pairs on two threads, in their order. Parts that stand as planned are
/// measured by their planned form (rib_room.h, turned_part.h), others by the kernel's solid-to-solid distance.
/// The first trouble ends the work; a stopped work is a Problem of that kind.
Outcome<std::vector<GapsFound>> find_gaps(const std::vector<GapWanted>& wanted, const Progress& progress);

}  // namespace prismwright
