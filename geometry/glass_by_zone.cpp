#include "geometry/glass_by_zone.h"

#include <algorithm>
#include <string>
#include <unordered_map>

#include "core/lens/trimmed_volume.h"

namespace prismwright {

std::vector<ZoneGlass> glass_by_zone(const LensPlan& plan) {
  std::vector<ZoneGlass> glass;
  for (const Zone& zone : plan.section.zones) glass.push_back({zone.mark, 0, 0});
  std::unordered_map<std::string, double> volumes;  // by shape
  for (const PlannedPrism& prism : plan.prisms) {
    const auto own = std::find_if(glass.begin(), glass.end(),
                                  [&](const ZoneGlass& zone) { return zone.mark == prism.zone; });
    if (own == glass.end()) continue;
    const auto [known, is_new] = volumes.try_emplace(prism.shape_key, 0.0);
    if (is_new) known->second = trimmed_volume_mm3(prism);
    own->pieces += 1;
    own->volume_mm3 += known->second;
    own->largest_mm3 = std::max(own->largest_mm3, known->second);
  }
  return glass;
}

}  // namespace prismwright
