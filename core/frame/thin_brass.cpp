#include "core/frame/thin_brass.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/frame/nearest_outline.h"
#include "core/frame/plate_step.h"

namespace prismwright {
namespace {

bool within_reach(const PlateExtent& box, PlatePoint p, double reach) {
  return p.u > box.low.u - reach && p.u < box.high.u + reach && p.v > box.low.v - reach &&
         p.v < box.high.v + reach;
}

// The least distance of two polygons lies at a corner of one of them.
void narrow(const PlateOutline& points, const NearestOutline& to, const PlateExtent& box, BrassWall& wall) {
  for (const PlatePoint p : points) {
    if (!within_reach(box, p, wall.wall_mm)) continue;
    const NearPlace near = to.to(p);
    if (near.away_mm >= wall.wall_mm) continue;
    wall.wall_mm = near.away_mm;
    wall.at = p + 0.5 * (near.nearest - p);
  }
}

}  // namespace

std::vector<BrassWall> thin_brass(const RibPlan& rib, double least_mm) {
  std::vector<NearestOutline> nearest;
  std::vector<PlateExtent> boxes;
  for (const Pocket& pocket : rib.pockets) {
    nearest.emplace_back(PlateRegion{pocket.outline});
    boxes.push_back(extent_of({pocket.outline}));
  }
  const NearestOutline edge(PlateRegion{rib.outline});
  std::vector<BrassWall> thin;
  for (std::size_t i = 0; i < rib.pockets.size(); ++i) {
    BrassWall wall{least_mm, {}, i, std::nullopt};
    narrow(rib.pockets[i].outline, edge, extent_of({rib.outline}), wall);
    narrow(rib.outline, nearest[i], boxes[i], wall);
    if (wall.wall_mm < least_mm) thin.push_back(wall);
    for (std::size_t k = i + 1; k < rib.pockets.size(); ++k) {
      BrassWall between{least_mm, {}, i, k};
      narrow(rib.pockets[i].outline, nearest[k], boxes[k], between);
      narrow(rib.pockets[k].outline, nearest[i], boxes[i], between);
      if (between.wall_mm < least_mm) thin.push_back(between);
    }
  }
  return thin;
}

namespace {

// Rounded, and without the minus of a zero.
double tenths(double mm) { return std::round(10 * mm) / 10 + 0.0; }

// Many pockets that run together hold a whole band.
std::string pocket_words(const Pocket& pocket) {
  constexpr std::size_t kMostNamed = 3;
  if (pocket.marks.size() <= kMostNamed) return fmt::format("{}", fmt::join(pocket.marks, ", "));
  return fmt::format("{} to {} ({} prisms)", pocket.marks.front(), pocket.marks.back(), pocket.marks.size());
}

}  // namespace

std::vector<FrameWarning> thin_brass_warnings(const RibPlan& rib, double least_mm) {
  std::vector<FrameWarning> warnings;
  for (const BrassWall& wall : thin_brass(rib, least_mm)) {
    const std::string pocket = fmt::format("the pocket of {}", pocket_words(rib.pockets[wall.pocket]));
    const std::string other = wall.other_pocket
                                  ? fmt::format("that of {}", pocket_words(rib.pockets[*wall.other_pocket]))
                                  : "the rib's edge";
    warnings.push_back(
        {FrameWarning::Kind::thin_brass,
         {},
         wall.wall_mm,
         least_mm,
         fmt::format(
             "Between {} and {} {:.2f} mm of brass are left at u {:.1f}, v {:.1f} mm, less than {:g} mm "
             "(frame.least_brass_mm). Take a smaller setting gap or a wider gap between the prisms.",
             pocket, other, wall.wall_mm, tenths(wall.at.u), tenths(wall.at.v), least_mm)});
  }
  return warnings;
}

}  // namespace prismwright
