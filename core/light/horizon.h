#pragma once

#include <vector>

#include "core/lens/brief.h"
#include "core/light/rhythm.h"

namespace prismwright {

/// Share of the mean under which a fixed light counts as dark in a direction: common practice asks a light to
/// keep the better part of its strength all round; the half is our own choice.
inline constexpr double kDarkShare = 0.5;

/// What a lens that stands still shows round the horizon, before the panels that hold prisms.
struct Horizon {
  double lit_deg = 0;   ///< width of those panels together
  double dark_deg = 0;  ///< of it, where the light falls under half of its mean
  double mean_cd = 0;
  double least_cd = 0;
};

/// From the curves of all panels (empty ones: blind), `places` in the same order.
Horizon horizon_of(const std::vector<PanelCurve>& curves, const std::vector<PanelPlace>& places);

}  // namespace prismwright
