#include "core/frame/frame_heights.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/angle.h"
#include "core/frame/needed_gap.h"

namespace prismwright {
namespace {

constexpr double kRoomAtRail_mm = 2;    // plain room between the outermost prisms and the rails
constexpr double kWallAtRail_mm = 1.5;  // brass of the rib between a pocket and the rail's joint
constexpr double kChord_mm = 0.01;

struct Reach {
  double low = std::numeric_limits<double>::max();
  double high = std::numeric_limits<double>::lowest();

  void take(const Profile& profile, bool mirrored_too) {
    for (const SectionPoint p : polygon_of(profile, kChord_mm)) {
      low = std::min({low, p.z, mirrored_too ? -p.z : p.z});
      high = std::max({high, p.z, mirrored_too ? -p.z : p.z});
    }
  }

  // A ring is highest, and lowest, over the panel's axis.
  void take(const PlannedPrism& prism) {
    if (prism.turning == TurningAxis::lens) return take(prism.profile, false);
    const double dip = radians(prism.axis_dip_deg);
    for (const SectionPoint p : polygon_of(prism.profile, kChord_mm)) {
      const double on_axis = prism.axis_z_mm - p.r * std::sin(dip);
      const double away = p.z * std::cos(dip);
      const double other = prism.trim.half == Half::whole ? -away : away;
      low = std::min({low, on_axis + away, on_axis + other});
      high = std::max({high, on_axis + away, on_axis + other});
    }
  }
};

}  // namespace

std::optional<FrameHeights> frame_heights(const LensPlan& plan) {
  Reach reach;
  double extent = 0;
  for (const Zone& zone : plan.section.zones) reach.take(zone.profile, is_refracting(zone.kind));
  for (const PlannedPrism& prism : plan.prisms) {
    reach.take(prism);
    if (prism.panel == plan.prisms.front().panel) {
      extent = std::max(extent, section_extent_mm(prism.profile));
    }
  }
  if (reach.low > reach.high) return std::nullopt;
  const FrameSettings& frame = plan.values.frame;
  const double room = std::max(kRoomAtRail_mm, frame.setting_gap_mm + kWallAtRail_mm) +
                      needed_gap_mm(extent, plan.values.material.name, frame.heat_range_k) + frame.rail_mm;
  return FrameHeights{reach.low - room, reach.high + room, reach.low, reach.high};
}

}  // namespace prismwright
