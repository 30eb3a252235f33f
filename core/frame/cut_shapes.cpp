#include "core/frame/cut_shapes.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"

namespace prismwright {

namespace {

bool through(const FlatPart& part, const PlatePocket& pocket) {
  constexpr double kFloor_mm = 1e-6;
  return pocket.depth_mm > part.thickness_mm - kFloor_mm;
}

bool alike(const FlatPart& a, const FlatPart& b) {
  return !a.shape_key.empty() && a.shape_key == b.shape_key && a.kind == b.kind && a.making == b.making &&
         a.metal == b.metal && a.thickness_mm == b.thickness_mm;
}

double circle_area_mm2(double across_mm) { return kPi / 4 * across_mm * across_mm; }

/// What a cone of 90 deg takes beside the hole that it sinks.
double sunk_volume_mm3(const PlateHole& hole) {
  const double wide = hole.sink_diameter_mm / 2;
  const double narrow = hole.diameter_mm / 2;
  if (wide <= narrow) return 0;
  const double deep = wide - narrow;
  return kPi / 3 * deep * (wide * wide + wide * narrow + narrow * narrow) - kPi * narrow * narrow * deep;
}

void reach(PlateExtent& extent, PlatePoint p) {
  extent.low = {std::min(extent.low.u, p.u), std::min(extent.low.v, p.v)};
  extent.high = {std::max(extent.high.u, p.u), std::max(extent.high.v, p.v)};
}

/// The arc passes the direction `way` (radians) as seen from its centre.
bool passes(const PlateStep& arc, double way) {
  const double from = std::atan2(arc.from.v - arc.centre.v, arc.from.u - arc.centre.u);
  double ahead = std::fmod(arc.turn > 0 ? way - from : from - way, 2 * kPi);
  if (ahead < 0) ahead += 2 * kPi;
  return ahead <= std::abs(arc.turn);
}

}  // namespace

std::vector<AlikePlates> alike_plates(const std::vector<FlatPart>& flats) {
  std::vector<AlikePlates> groups;
  for (std::size_t i = 0; i < flats.size(); ++i) {
    const auto known = std::ranges::find_if(
        groups, [&](const AlikePlates& group) { return alike(flats[group.front()], flats[i]); });
    if (known == groups.end()) {
      groups.push_back({i});
    } else {
      known->push_back(i);
    }
  }
  return groups;
}

std::vector<PlateChain> through_cuts(const FlatPart& part) {
  std::vector<PlateChain> cuts = part.openings;
  for (const PlatePocket& pocket : part.pockets) {
    if (through(part, pocket)) cuts.push_back(pocket.outline);
  }
  return cuts;
}

std::vector<PlatePocket> blind_pockets(const FlatPart& part) {
  std::vector<PlatePocket> blind;
  for (const PlatePocket& pocket : part.pockets) {
    if (!through(part, pocket)) blind.push_back(pocket);
  }
  return blind;
}

double face_area_mm2(const FlatPart& part) {
  double area = signed_area_mm2(part.outline);
  for (const PlateChain& cut : through_cuts(part)) area -= std::abs(signed_area_mm2(cut));
  for (const PlateHole& hole : part.holes) area -= circle_area_mm2(hole.diameter_mm);
  return area;
}

double volume_mm3(const FlatPart& part) {
  double volume = face_area_mm2(part) * part.thickness_mm;
  for (const PlatePocket& pocket : blind_pockets(part)) {
    volume -= std::abs(signed_area_mm2(pocket.outline)) * pocket.depth_mm;
  }
  for (const PlateHole& hole : part.holes) volume -= sunk_volume_mm3(hole);
  for (const PlateBore& bore : part.bores) volume -= circle_area_mm2(bore.diameter_mm) * bore.depth_mm;
  return volume;
}

double mass_g(const FlatPart& part) { return volume_mm3(part) / 1000 * density_g_cm3(part.metal); }

PlateExtent extent_of(const PlateChain& chain) {
  PlateExtent extent{chain.front().from, chain.front().from};
  for (const PlateStep& step : chain) {
    reach(extent, step.to);
    if (step.straight()) continue;
    for (int quarter = 0; quarter < 4; ++quarter) {
      const double way = quarter * kPi / 2;
      if (!passes(step, way)) continue;
      reach(extent,
            {step.centre.u + step.radius_mm * std::cos(way), step.centre.v + step.radius_mm * std::sin(way)});
    }
  }
  return extent;
}

}  // namespace prismwright
