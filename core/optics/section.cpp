#include "core/optics/section.h"

#include <algorithm>

#include "core/optics/section_maker.h"

namespace prismwright {

std::string_view name_of(ZoneKind kind) {
  switch (kind) {
    case ZoneKind::centre:
      return "centre";
    case ZoneKind::ring:
      return "refracting";
    case ZoneKind::upper:
      return "upper reflecting";
    case ZoneKind::lower:
      return "lower reflecting";
  }
  return "centre";
}

const Zone* Section::find(std::string_view mark) const {
  const auto found = std::find_if(zones.begin(), zones.end(), [&](const Zone& z) { return z.mark == mark; });
  return found == zones.end() ? nullptr : &*found;
}

std::string_view name_of(Band band) {
  switch (band) {
    case Band::refracting:
      return "refracting";
    case Band::upper:
      return "upper";
    case Band::lower:
      return "lower";
  }
  return "refracting";
}

Band band_of(ZoneKind kind) {
  if (is_refracting(kind)) return Band::refracting;
  return kind == ZoneKind::upper ? Band::upper : Band::lower;
}

Profile lower_image_of(const Zone& zone) {
  return zone.lower_image ? *zone.lower_image : mirrored(zone.profile);
}

BandAim band_aim(const SectionInput& input, Band band) {
  const BandSettings& settings = input.settings.of(band);
  const double common = input.settings.aim_at == AimAt::horizon ? input.dip_deg : 0;
  return {settings.focus_z_mm, settings.aim_deg.value_or(common)};
}

BandAim Section::aim_of(ZoneKind kind) const { return band_aim(input, band_of(kind)); }

Outcome<Section> solve_section(const SectionInput& input) { return SectionMaker(input).make(); }

}  // namespace prismwright
