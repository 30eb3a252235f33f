#pragma once

#include <optional>
#include <vector>

#include "geometry/fit_body.h"

namespace prismwright {

/// A touch no deeper than this does not hold a part up, mm.
inline constexpr double kFitTouch_mm = 0.02;
/// A touch that lasts less of the way than this may be passed over, mm.
inline constexpr double kFitStep_mm = 0.25;

/// A way of straight legs, each a displacement in mm, one after another.
using FitPath = std::vector<SpaceVector>;

/// Where a part that moves is held up.
struct FitTouch {
  SpacePoint where;
  double after_mm = 0;  ///< way gone till then
};

/// The first touch deeper than kFitTouch_mm that is found when one part moves past another; blank when the way
/// is free. Places of either skin are followed into the other part; the distance to it says how far each can go
/// unasked. So what is missed is a touch between places of both skins (fit_body.h) or one that ends within
/// kFitStep_mm of the way.
std::optional<FitTouch> touch_on_way(const FitBody& moving, const FitPath& path, const FitBody& still);

/// Whether the way is free; quicker, for it is done with any touch.
bool is_free_way(const FitBody& moving, const FitPath& path, const FitBody& still);

}  // namespace prismwright
