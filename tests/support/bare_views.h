#pragma once

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

#include "core/base/angle.h"
#include "core/drawing/arrangement_sheet.h"
#include "tests/support/rough_views.h"

namespace prismwright {

/// Views of a lens made without solids: wires of the plan's prisms and outlines of the frame's plates,
/// projected as they are. Nothing is hidden but what stands beyond the focus in the elevation.
inline ArrangementViews bare_views(const LensPlan& plan, const FramePlan& frame) {
  ArrangementViews views;
  const auto add = [](LineView& whole, LineView part) {
    whole.low = {std::min(whole.low.x, part.low.x), std::min(whole.low.y, part.low.y)};
    whole.high = {std::max(whole.high.x, part.high.x), std::max(whole.high.y, part.high.y)};
    std::ranges::move(part.lines, std::back_inserter(whole.lines));
  };
  for (const PlannedPrism& prism : plan.prisms) {
    const RoughWires wires(prism);
    const double turn = radians(prism.axis_deg);
    const SpaceVector lens_x = {std::cos(turn), -std::sin(turn), 0};  // in the frame of the panel
    const SpaceVector lens_y = {std::sin(turn), std::cos(turn), 0};
    add(views.plan, wires.seen(lens_x, lens_y));
    if (std::cos(turn) > 0) add(views.elevation, wires.seen(lens_y, {0, 0, 1}));
  }
  for (const FlatPart& part : frame.flats) {
    for (const double depth : {0.0, part.thickness_mm}) {
      LineView from_sea{{{{}, false, false}}, {}, {}};
      LineView from_above = from_sea;
      const auto take = [](LineView& view, PaperPoint p) {
        view.lines.front().points.push_back(p);
        view.low = {std::min(view.low.x, p.x), std::min(view.low.y, p.y)};
        view.high = {std::max(view.high.x, p.x), std::max(view.high.y, p.y)};
      };
      for (const PlatePoint p : flattened(part.outline, 0.05)) {
        const SpacePoint at = part.place.out_of(SpacePoint{p.u, p.v, depth});
        take(from_sea, {at.y, at.z});
        take(from_above, {at.x, at.y});
      }
      add(views.elevation, std::move(from_sea));
      add(views.plan, std::move(from_above));
    }
  }
  return views;
}

}  // namespace prismwright
