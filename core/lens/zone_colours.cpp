#include "core/lens/zone_colours.h"

namespace prismwright {

bool disperses(const Material& material) {
  return material.index_at(kLineF_nm) != material.index_at(kLineC_nm);
}

std::vector<ZoneColours> zone_colours(const Section& section, const Material& material) {
  auto fan = colour_fan(
      section, {material.index_at(kLineF_nm), material.index_at(kLineD_nm), material.index_at(kLineC_nm)});
  if (disperses(material)) return fan;
  for (ZoneColours& zone : fan) {
    for (ColourDepartures* rays : {&zone.low, &zone.middle, &zone.high}) rays->f = rays->c = std::nullopt;
  }
  return fan;
}

}  // namespace prismwright
