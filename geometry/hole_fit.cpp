#include "geometry/hole_fit.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include <gp_Vec.hxx>

namespace prismwright {
namespace {

constexpr double kCoaxial = 1e-9;
constexpr double kCoaxial_mm = 1e-7;

// Radius of the part so far from its head's end; a sunk head narrows by 45 degrees.
double radius_at(const RoundPart& round, double along) {
  return std::max(round.diameter_mm / 2, round.head_mm / 2 - along);
}

// Radius of the hole at a depth over the plate's back face.
double radius_at(const PlateHole& hole, const FlatPart& plate, double depth) {
  const double sunk = hole.sunk_in_back ? depth : plate.thickness_mm - depth;
  return std::max(hole.diameter_mm / 2, hole.sink_diameter_mm / 2 - sunk);
}

}  // namespace

std::optional<SolidGap> touch_in_hole(const RoundPart& round, const FlatPart& plate, const gp_Trsf& to_plate) {
  const gp_Pnt start = gp_Pnt(0, 0, 0).Transformed(to_plate);
  const gp_Vec along = gp_Vec(0, 0, 1).Transformed(to_plate);
  if (std::hypot(along.X(), along.Y()) > kCoaxial) return std::nullopt;
  const auto hole = std::find_if(plate.holes.begin(), plate.holes.end(), [&](const PlateHole& h) {
    return std::hypot(h.centre.u - start.X(), h.centre.v - start.Y()) < kCoaxial_mm;
  });
  if (hole == plate.holes.end()) return std::nullopt;
  const double way = along.Z() > 0 ? 1 : -1;
  const double end = start.Z() + way * round.length_mm;
  const double low = std::max(0.0, std::min(start.Z(), end));
  const double high = std::min(plate.thickness_mm, std::max(start.Z(), end));
  if (low >= high) return std::nullopt;
  // Both radii are straight between these depths, so the least room is at one of them.
  const double head = start.Z() + way * (round.head_mm - round.diameter_mm) / 2;
  const double cone = (hole->sink_diameter_mm - hole->diameter_mm) / 2;
  const double sunk = hole->sunk_in_back ? cone : plate.thickness_mm - cone;
  double least = std::numeric_limits<double>::max();
  double at = low;
  for (const double bend : std::array{low, high, head, sunk}) {
    const double depth = std::clamp(bend, low, high);
    const double room = radius_at(*hole, plate, depth) - radius_at(round, std::abs(depth - start.Z()));
    if (room < least) at = depth;
    least = std::min(least, room);
  }
  if (least < -kCoaxial_mm || least > kTouching_mm) return std::nullopt;
  const gp_Pnt touch(start.X() + radius_at(*hole, plate, at), start.Y(), at);
  return SolidGap{0, 0, touch, touch};
}

}  // namespace prismwright
