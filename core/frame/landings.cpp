#include "core/frame/landings.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "core/frame/nearest_outline.h"
#include "core/frame/plate_step.h"
#include "core/frame/prism_end.h"

namespace prismwright {
namespace {

constexpr double kChord_mm = 0.02;
constexpr double kStep_mm = 0.25;
constexpr double kOverGap_mm = 0.05;  // a wall that stands farther off than this bears nothing
constexpr double kLeastSlope = 0.1;   // sine: steeper faces slide rather than rest
constexpr int kDepths = 16;

// Where the prism's end begins, as a depth from the side plane; blank when it does not reach the rib.
std::optional<double> deepest(const PlannedPrism& prism, const RibPlan& rib) {
  const double from = prism.trim.set_back_mm;
  for (int k = 0; k <= kDepths; ++k) {
    const double depth = from + (rib.thickness_mm - from) * k / kDepths;
    if (!end_slice(prism, rib.side, depth, kChord_mm).empty()) return depth;
  }
  return std::nullopt;
}

// Level length of the edges that face down and have the wall under them. A slice may stand before the rib's
// face: a prism that leans out of its pocket rests on the wall's arris.
double borne_width_mm(const PlateOutline& end, const NearestOutline& wall, double before_mm, double gap_mm) {
  double width = 0;
  for (std::size_t i = 0; i < end.size(); ++i) {
    const PlateVector edge = end[(i + 1) % end.size()] - end[i];
    const double length = length_of(edge);
    if (edge.u < kLeastSlope * length) continue;  // anticlockwise: the under side runs outward
    const int parts = std::max(1, static_cast<int>(std::ceil(length / kStep_mm)));
    for (int k = 0; k < parts; ++k) {
      const NearPlace near = wall.to(end[i] + (k + 0.5) / parts * edge);
      const bool under = near.nearest.v < near.from.v;
      if (under && std::hypot(near.away_mm, before_mm) < gap_mm + kOverGap_mm) width += edge.u / parts;
    }
  }
  return width;
}

Landing landing_of(const PlannedPrism& prism, const RibPlan& rib, double depth_mm, const NearestOutline& wall,
                   double gap_mm) {
  Landing landing{rib.mark, prism.mark, rib.thickness_mm - depth_mm, 0};
  std::vector<double> depths{depth_mm, depth_mm + landing.reach_mm / 2, rib.thickness_mm};
  for (const double share : {0.2, 0.4, 0.6, 0.8}) depths.push_back(rib.thickness_mm + share * gap_mm);
  for (const double depth : depths) {
    const double before = std::max(0.0, depth - rib.thickness_mm);
    double width = 0;
    for (const PlateOutline& end : filled(end_slice(prism, rib.side, depth, kChord_mm))) {
      width += borne_width_mm(end, wall, before, gap_mm);
    }
    landing.width_mm = std::max(landing.width_mm, width);
  }
  return landing;
}

// A congruent rib's landings under the marks of this one.
Landing renamed(Landing landing, const RibPlan& rib) {
  landing.rib = rib.mark;
  const std::size_t dash = landing.prism.find('-');
  if (dash != std::string::npos) landing.prism = fmt::format("P{:02}{}", rib.panel, landing.prism.substr(dash));
  return landing;
}

}  // namespace

std::vector<Landing> landings_of(const RibPlan& rib, const LensPlan& plan) {
  std::vector<Landing> all;
  for (const Pocket& pocket : rib.pockets) {
    const NearestOutline wall(PlateRegion{pocket.outline});
    for (const std::string& mark : pocket.marks) {
      const PlannedPrism* prism = plan.find(mark);
      const auto depth = prism ? deepest(*prism, rib) : std::nullopt;
      if (depth) all.push_back(landing_of(*prism, rib, *depth, wall, plan.values.frame.setting_gap_mm));
    }
  }
  return all;
}

std::vector<Landing> landings(const FramePlan& frame, const LensPlan& plan) {
  std::map<std::string, std::vector<Landing>> known;
  std::vector<Landing> all;
  for (const RibPlan& rib : frame.ribs) {
    auto found = known.find(rib.shape_key);
    if (found == known.end()) found = known.emplace(rib.shape_key, landings_of(rib, plan)).first;
    for (const Landing& landing : found->second) all.push_back(renamed(landing, rib));
  }
  return all;
}

std::vector<FrameWarning> landing_warnings(const RibPlan& rib, const LensPlan& plan, double least_mm) {
  std::vector<FrameWarning> warnings;
  std::map<std::string, Landing> of;
  for (const Landing& landing : landings_of(rib, plan)) {
    of.emplace(landing.prism, landing);
    if (landing.reach_mm >= least_mm) continue;
    warnings.push_back({FrameWarning::Kind::small_landing,
                        {},
                        landing.reach_mm,
                        least_mm,
                        fmt::format("{} reaches {:.2f} mm into its pocket, less than {:g} mm "
                                    "(frame.least_landing_mm). Take deeper pockets or a smaller end gap.",
                                    landing.prism, landing.reach_mm, least_mm)});
  }
  for (const Pocket& pocket : rib.pockets) {
    double width = 0;
    for (const std::string& mark : pocket.marks) {
      if (const auto found = of.find(mark); found != of.end()) width += found->second.width_mm;
    }
    if (width >= least_mm) continue;
    warnings.push_back(
        {FrameWarning::Kind::small_landing,
         {},
         width,
         least_mm,
         fmt::format("{} rest on {:.2f} mm of brass in all, less than {:g} mm "
                     "(frame.least_landing_mm). Hold them by the panel's other rib or by a rail.",
                     fmt::join(pocket.marks, ", "), width, least_mm)});
  }
  return warnings;
}

}  // namespace prismwright
