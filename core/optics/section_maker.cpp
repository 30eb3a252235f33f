#include "core/optics/section_maker.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"

namespace prismwright {

namespace {

double elevation_of(SectionPoint p) { return std::atan2(p.z, p.r); }

/// The radius that fits any order: 4000 mm at the focal distance of 920 mm (Stevenson 1848, p. 283).
double pair_radius_of(const SectionInput& input) {
  return input.settings.pair_radius_mm.value_or(4000 * input.focal_mm / 920);
}

Land land_of(const SectionSettings& settings, const CornerLand& corner) {
  return {corner.shape, corner.size_mm.value_or(settings.land_mm)};
}

/// What a lower stack is worked out as: the same above the focal plane.
Zone mirrored_zone(Zone zone) {
  zone.kind = ZoneKind::lower;
  std::swap(zone.from_deg, zone.to_deg);
  zone.from_deg = -zone.from_deg;
  zone.to_deg = -zone.to_deg;
  zone.profile = mirrored(zone.profile);
  zone.start_a = mirrored(zone.start_a);
  ReflectingCorners& k = *zone.corners;
  k = {mirrored(k.a), mirrored(k.b), mirrored(k.c), -k.beta, -k.gamma};
  return zone;
}

SectionRib mirrored_rib(const SectionRib& rib) {
  return {rib.mark, {rib.low.r, -rib.high.z}, {rib.high.r, -rib.low.z}};
}

/// A ring's own profile, or its image turned up, or the upper half of a centre: what a stack stands on.
Profile seen_from(const Zone& zone, Band band) {
  if (band == Band::upper) return zone.profile;
  return zone.kind == ZoneKind::ring ? mirrored(lower_image_of(zone)) : mirrored(zone.profile);
}

}  // namespace

Outcome<Section> SectionMaker::make() {
  if (const Done done = add_band(); !done) return done.problem();
  for (const Band band : {Band::upper, Band::lower}) {
    add_rib(band);
    if (const Done done = add_stack(band); !done) return done.problem();
  }
  find_limits();
  return std::move(section_);
}

Done SectionMaker::add_band() {
  const BandAim aim = band_aim(input(), Band::refracting);
  const double depression = radians(aim.aim_deg);
  const bool upright = input().refracting_about_lens;
  auto band = solve_band({input(), upright ? depression : 0, upright ? 0 : depression});
  if (!band) return band.problem();
  section_.notes = std::move(band->notes);
  const BandFrame frame(aim.focus_z_mm, upright ? 0 : depression);
  for (Zone& zone : band->zones) {
    if (!frame.is_section()) {
      if (zone.kind == ZoneKind::ring) zone.lower_image = frame.into_section(lower_image_of(zone));
      zone.profile = frame.into_section(std::move(zone.profile));
      zone.from_deg -= degrees(frame.aim());
      zone.to_deg -= degrees(frame.aim());
    }
    section_.zones.push_back(std::move(zone));
  }
  return {};
}

void SectionMaker::add_rib(Band band) {
  const double thickness = band == Band::upper ? settings().upper_rib_mm : settings().lower_rib_mm;
  if (thickness <= 0) return;
  const Profile glass = seen_from(last_ring(), band);
  const Face* outer = glass.find(FaceRole::outer);
  const SectionPoint edge = outer->end();
  SectionRib rib;
  rib.mark = fmt::format("{} rib", name_of(band));
  const double inner = settings().rib_inner_r_mm.value_or(input().focal_mm);
  const double top = std::max(edge.z, glass.find(FaceRole::inner)->start().z);
  rib.low = {inner, top + settings().gap_mm};
  rib.high = {std::max(inner, settings().rib_outer_r_mm.value_or(edge.r)), rib.low.z + thickness};
  section_.ribs.push_back(band == Band::upper ? rib : mirrored_rib(rib));
}

const Zone& SectionMaker::last_ring() const {
  const auto last = std::find_if(section_.zones.rbegin(), section_.zones.rend(),
                                 [](const Zone& zone) { return is_refracting(zone.kind); });
  return *last;
}

BandFrame SectionMaker::stack_frame(Band band) const {
  const BandFrame frame = turning_frame(input(), band);
  return band == Band::upper ? frame : BandFrame(-frame.focus_z_mm(), -frame.aim());
}

StackTask SectionMaker::task_of(Band band) const {
  StackTask task;
  const BandSettings& own = settings().of(band);
  task.band = band;
  task.settings = own;
  task.kind = {input().index, settings().faces_of(band), own.power, pair_radius_of(input())};
  task.lands = {land_of(settings(), settings().land_a), land_of(settings(), settings().land_b),
                land_of(settings(), settings().land_c)};
  task.gap_mm = settings().gap_mm;
  task.side_mm = own.side_mm.value_or(settings().reflecting_chord_mm);
  return task;
}

void SectionMaker::set_start(StackTask& task, const BandFrame& frame, const Zone& last) const {
  const Profile glass = seen_from(last, task.band);
  const Face& outer = *glass.find(FaceRole::outer);
  const SectionPoint inner_edge = glass.find(FaceRole::inner)->start();
  const SectionPoint outer_edge = outer.end();
  double limiting = elevation_of(frame.out_of(inner_edge));
  // From a lower focal point the light of the principal focus must still be caught.
  const BandFrame ring = band_own_frame(task.band);
  if (frame.focus_z_mm() < ring.focus_z_mm()) {
    const double seen = elevation_of(inner_edge - SectionOffset{0, ring.focus_z_mm()});
    const SectionPoint on_ray{(outer_edge.z - ring.focus_z_mm()) / std::tan(seen), outer_edge.z};
    limiting = elevation_of(frame.out_of(on_ray));
  }
  double height = frame.out_of(outer_edge).z;
  for (SectionRib rib : section_.ribs) {
    if (rib.mark != fmt::format("{} rib", name_of(task.band))) continue;
    if (task.band == Band::lower) rib = mirrored_rib(rib);
    for (const SectionPoint corner : {SectionPoint{rib.low.r, rib.high.z}, rib.high}) {
      limiting = std::max(limiting, elevation_of(frame.out_of(corner)));
      height = std::max(height, frame.out_of(corner).z);
    }
  }
  task.start_elevation = limiting;
  task.start_height_mm = height;
}

BandFrame SectionMaker::band_own_frame(Band side) const {
  const BandAim aim = band_aim(input(), Band::refracting);
  return {side == Band::upper ? aim.focus_z_mm : -aim.focus_z_mm, 0};
}

Done SectionMaker::add_stack(Band band) {
  StackTask task = task_of(band);
  const BandFrame frame = stack_frame(band);
  task.aim = frame.aim();
  set_start(task, frame, last_ring());
  task.limit = radians(band == Band::upper ? settings().upper_to_deg : settings().lower_to_deg) + frame.aim();
  if (band == Band::upper && settings().upper_start_r_mm && settings().upper_start_z_mm)
    task.corner_a = frame.out_of(SectionPoint{*settings().upper_start_r_mm, *settings().upper_start_z_mm});
  for (ZoneRow& row : task.settings.rows) row.corner_a = frame.out_of(row.corner_a);
  auto stack = solve_stack(task);
  if (!stack) return stack.problem();
  section_.notes.insert(section_.notes.end(), stack->notes.begin(), stack->notes.end());
  for (std::size_t i = 0; i < stack->prisms.size(); ++i) {
    auto profile = stack->prisms[i].prism.profile();
    Zone zone = zone_of(stack->prisms[i], i + 1, band, frame);
    if (!profile) {
      Problem problem = profile.problem();
      problem.text = fmt::format("zone {}: {}", zone.mark, problem.text);
      return problem;
    }
    zone.profile = frame.into_section(std::move(*profile));
    section_.zones.push_back(band == Band::upper ? std::move(zone) : mirrored_zone(std::move(zone)));
  }
  return {};
}

Zone SectionMaker::zone_of(const StackedPrism& stacked, std::size_t number, Band band,
                           const BandFrame& frame) const {
  Zone zone;
  zone.mark = fmt::format("{}{:02}", band == Band::upper ? 'U' : 'L', number);
  zone.kind = ZoneKind::upper;
  zone.number = static_cast<int>(number);
  zone.from_deg = degrees(stacked.reach.low - frame.aim());
  zone.to_deg = degrees(stacked.reach.high - frame.aim());
  zone.corners = frame.into_section(stacked.prism.corners());
  zone.start_a = frame.into_section(stacked.prism.shape().start_a);
  zone.side_mm = stacked.prism.side_mm();
  zone.thickness_mm = stacked.prism.reflecting_chord_mm();
  zone.section_thickness_mm = circle_inside_mm(stacked.prism.corners());
  zone.locked = stacked.locked;
  return zone;
}

void SectionMaker::find_limits() {
  section_.lowest_deg = 0;
  section_.highest_deg = 0;
  const double tilt = input().refracting_about_lens ? 0 : band_aim(input(), Band::refracting).aim_deg;
  for (const Zone& zone : section_.zones) {
    section_.lowest_deg = std::min(section_.lowest_deg, zone.from_deg);
    section_.highest_deg = std::max(section_.highest_deg, zone.to_deg);
    // A ring's image reaches as far below the tilted axis as the ring above it.
    if (is_refracting(zone.kind))
      section_.lowest_deg = std::min(section_.lowest_deg, -(zone.to_deg + tilt) - tilt);
  }
}

}  // namespace prismwright
