#include "core/drawing/cut_metal.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"

namespace prismwright {

namespace {

constexpr double kChord_mm = 0.01;

bool is_level(const FlatPart& part) { return std::abs(part.place.third.z) > 1 - 1e-9; }

bool is_shown(PartKind kind) {
  return kind == PartKind::ring || kind == PartKind::base_table || kind == PartKind::finial_plate ||
         kind == PartKind::rail;
}

/// Distances from `from` along the unit step at which the half line crosses the polygon.
void cross(const PlateOutline& polygon, PlatePoint from, PlatePoint along, std::vector<double>& distances) {
  const auto side = [&](PlatePoint p) { return along.u * (p.v - from.v) - along.v * (p.u - from.u); };
  const auto ahead = [&](PlatePoint p) { return along.u * (p.u - from.u) + along.v * (p.v - from.v); };
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const PlatePoint a = polygon[i];
    const PlatePoint b = polygon[(i + 1) % polygon.size()];
    if ((side(a) < 0) == (side(b) < 0)) continue;
    const double share = side(a) / (side(a) - side(b));
    const double distance = ahead(a) + share * (ahead(b) - ahead(a));
    if (distance > 0) distances.push_back(distance);
  }
}

/// Where the half line from the lens axis runs through the plate's brass: distances by turns in and out.
std::vector<double> through(const FlatPart& part, SpaceVector along) {
  const SpacePoint axis = part.place.into(SpacePoint{0, 0, part.place.origin.z});
  const SpaceVector step = part.place.into(along);
  std::vector<double> distances;
  cross(flattened(part.outline, kChord_mm), {axis.x, axis.y}, {step.x, step.y}, distances);
  for (const PlateChain& opening : part.openings)
    cross(flattened(opening, kChord_mm), {axis.x, axis.y}, {step.x, step.y}, distances);
  for (const PlateHole& hole : part.holes) {
    const PlateChain edge = circle_chain(hole.centre, hole.diameter_mm / 2);
    cross(flattened(edge, kChord_mm), {axis.x, axis.y}, {step.x, step.y}, distances);
  }
  std::ranges::sort(distances);
  // An odd count of crossings: the axis itself lies in the brass.
  if (distances.size() % 2 == 1) distances.insert(distances.begin(), 0);
  return distances;
}

}  // namespace

std::vector<CutPlate> cut_plates(const FramePlan& frame, double azimuth_deg) {
  const SpaceVector along = direction_at(radians(azimuth_deg), 0);
  std::vector<CutPlate> cuts;
  for (const FlatPart& part : frame.flats) {
    if (!is_shown(part.kind) || !is_level(part)) continue;
    const double back = part.place.origin.z;
    const double front = back + part.thickness_mm * part.place.third.z;
    const auto distances = through(part, along);
    for (std::size_t i = 0; i + 1 < distances.size(); i += 2)
      cuts.push_back(
          {part.mark, {distances[i], std::min(back, front)}, {distances[i + 1], std::max(back, front)}});
  }
  return cuts;
}

}  // namespace prismwright
