#include "core/frame/rib_part.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/frame/rib_key.h"

namespace prismwright {
namespace {

SpaceFrame place_of(const RibPlan& rib) {
  const double azimuth = radians(rib.azimuth_deg);
  const double inward = rib.side == Side::clockwise ? 1 : -1;
  const SpaceVector into_panel{-inward * std::sin(azimuth), inward * std::cos(azimuth), 0};
  const SpaceVector up{0, 0, 1};
  return {SpacePoint{} + rib.set_back_mm * into_panel, cross(up, into_panel), up, into_panel};
}

}  // namespace

FlatPart rib_part(const RibPlan& rib) {
  const auto drawn = [&](const PlateChain& chain) {
    return rib.side == Side::clockwise ? mirrored(chain) : chain;
  };
  FlatPart part;
  part.mark = rib.mark;
  part.kind = PartKind::side_rib;
  part.panel = rib.panel;
  part.thickness_mm = rib.thickness_mm - rib.set_back_mm;
  part.outline = drawn(rib.edge);
  for (const Pocket& pocket : rib.pockets) {
    part.pockets.push_back({drawn(pocket.edge), std::min(rib.pocket_mm, part.thickness_mm), pocket.marks});
  }
  part.place = place_of(rib);
  part.shape_key = rib_plate_key(part);
  return part;
}

}  // namespace prismwright
