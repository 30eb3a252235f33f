#include "core/optics/section.h"

#include <algorithm>

#include "core/base/angle.h"
#include "core/optics/band_solver.h"
#include "core/optics/stack_solver.h"

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

namespace {

/// What a reflecting stack starts from: the limiting ray of the last ring and the height of its outer edge.
StackStart start_above(const std::vector<Zone>& band) {
  const Zone& last = band.back();
  const Face* outer = last.profile.find(FaceRole::outer);
  return {radians(last.to_deg), outer->end().z, std::nullopt};
}

Zone mirrored_zone(Zone zone) {
  zone.kind = ZoneKind::lower;
  zone.mark[0] = 'L';
  std::swap(zone.from_deg, zone.to_deg);
  zone.from_deg = -zone.from_deg;
  zone.to_deg = -zone.to_deg;
  zone.profile = mirrored(zone.profile);
  ReflectingCorners& k = *zone.corners;
  k = {mirrored(k.a), mirrored(k.b), mirrored(k.c), -k.beta, -k.gamma};
  return zone;
}

}  // namespace

Outcome<Section> solve_section(const SectionInput& input) {
  Section section;
  section.input = input;
  auto band = solve_band(input);
  if (!band) return band.problem();
  section.zones = *band;
  const StackStart start = start_above(*band);
  const double band_top_deg = section.zones.back().to_deg;
  section.lowest_deg = -band_top_deg;
  section.highest_deg = band_top_deg;

  StackStart above = start;
  if (input.settings.upper_start_r_mm && input.settings.upper_start_z_mm) {
    above.corner_a = SectionPoint{*input.settings.upper_start_r_mm, *input.settings.upper_start_z_mm};
  }
  auto upper = solve_stack(input, above, input.settings.upper_to_deg, StackSide::upper, section.notes);
  if (!upper) return upper.problem();
  auto lower = solve_stack(input, start, input.settings.lower_to_deg, StackSide::lower, section.notes);
  if (!lower) return lower.problem();
  for (Zone& zone : *upper) section.zones.push_back(std::move(zone));
  for (Zone& zone : *lower) section.zones.push_back(mirrored_zone(std::move(zone)));
  for (const Zone& zone : section.zones) {
    section.lowest_deg = std::min(section.lowest_deg, zone.from_deg);
    section.highest_deg = std::max(section.highest_deg, zone.to_deg);
  }
  return section;
}

}  // namespace prismwright
