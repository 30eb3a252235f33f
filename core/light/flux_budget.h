#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/outcome.h"
#include "core/base/progress.h"
#include "core/light/beam_map.h"

namespace prismwright {

/// What becomes of the lamp's light.
enum class LightFate {
  level,        ///< leaves by a prism's own way; how far from level, the lamp's size decides
  stray_up,     ///< leaves the glass by another way, above level
  stray_down,   ///< the same below
  reflected,    ///< thrown back by refracting faces
  absorbed,     ///< in the glass; and what is still inside after forty faces
  metal,        ///< stopped by brass
  lamp,         ///< stopped by another lamp of the set
  missed_up,    ///< met neither glass nor metal, above level
  missed_down,  ///< the same below
};
inline constexpr int kLightFates = 9;
std::string_view name_of(LightFate fate);  ///< "level", "stray up", ...

/// Light of one zone, all its prisms together, lm.
struct ZoneFlux {
  std::string zone;
  double level_lm = 0;
  double stray_lm = 0;
};

/// Where the lamp's light goes.
struct FluxBudget {
  double flux_lm = 0;  ///< of the lamp; the parts add to it
  std::array<double, kLightFates> lm{};
  std::array<double, kLightFates> error_lm{};  ///< standard errors, from four independent sets of rays
  std::vector<ZoneFlux> zones;
  long rays = 0;

  [[nodiscard]] double of(LightFate fate) const { return lm[static_cast<std::size_t>(fate)]; }
  [[nodiscard]] double stray_lm() const { return of(LightFate::stray_up) + of(LightFate::stray_down); }
};

/// What is asked of a budget.
struct BudgetRequest {
  std::vector<BeamColour> colours;  ///< at least one; weights add to 1
  long rays = 60000;                ///< of each colour, four sets together
};

/// Follows rays drawn at random (always the same ones) over the lamp's light through the lens. Each ray is
/// followed along its main branch; what it loses on the way is booked where it is lost. Fails only when stopped
/// through `progress`.
Outcome<FluxBudget> flux_budget(const LightLens& lens, const LampBody& lamp, const BudgetRequest& request,
                                const Progress& progress = {});

}  // namespace prismwright
