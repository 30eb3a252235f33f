#include "core/optics/light_strips.h"

#include <algorithm>

namespace prismwright {

namespace {

constexpr double kSeenStrip_mm = 1e-3;

}  // namespace

std::vector<LightStrip> with_dark_between(std::vector<LightStrip> lit) {
  std::sort(lit.begin(), lit.end(),
            [](const LightStrip& a, const LightStrip& b) { return a.from_mm < b.from_mm; });
  std::vector<LightStrip> all;
  double reached = 0;
  for (LightStrip& strip : lit) {
    if (all.empty()) reached = strip.from_mm;
    if (strip.from_mm - reached > kSeenStrip_mm) all.push_back({reached, strip.from_mm, {}});
    reached = std::max(reached, strip.to_mm);
    all.push_back(std::move(strip));
  }
  return all;
}

}  // namespace prismwright
