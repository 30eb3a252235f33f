#include "ui/views/chain_path.h"

#include <cmath>

#include "core/base/angle.h"

namespace prismwright {

QPainterPath chain_path(const PlateChain& chain) {
  QPainterPath path;
  if (chain.empty()) return path;
  path.moveTo(chain.front().from.u, chain.front().from.v);
  for (const PlateStep& step : chain) {
    if (step.straight()) {
      path.lineTo(step.to.u, step.to.v);
      continue;
    }
    // Qt counts angles with y down: both they and the sweep change sign.
    const double start = degrees(std::atan2(step.from.v - step.centre.v, step.from.u - step.centre.u));
    const QRectF round(step.centre.u - step.radius_mm, step.centre.v - step.radius_mm, 2 * step.radius_mm,
                       2 * step.radius_mm);
    path.arcTo(round, -start, -degrees(step.turn));
  }
  path.closeSubpath();
  return path;
}

}  // namespace prismwright
