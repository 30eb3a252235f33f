#include "core/frame/rib_holes.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace prismwright {
namespace {

constexpr int kEdgeSteps = 24;

std::optional<double> rightmost_at(const PlateOutline& outline, double v) {
  std::optional<double> most;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const PlatePoint a = outline[i];
    const PlatePoint b = outline[i + 1 < outline.size() ? i + 1 : 0];
    if (v < std::min(a.v, b.v) || v > std::max(a.v, b.v)) continue;
    const double u = a.v == b.v ? std::max(a.u, b.u) : a.u + (b.u - a.u) * (v - a.v) / (b.v - a.v);
    most = std::max(most.value_or(u), u);
  }
  return most;
}

}  // namespace

RibBrass::RibBrass(const RibPlan& rib, const FlatPart& plate, HeightRange heights)
    : outline_(rib.outline, heights) {
  for (const Pocket& pocket : rib.pockets) {
    const PlateEdges edges(pocket.outline, heights);
    if (!edges.empty()) pockets_.push_back(edges);
  }
  for (const PlateHole& hole : plate.holes) {
    const SpacePoint centre = plate.place.out_of(SpacePoint{hole.centre.u, hole.centre.v, 0});
    const double u = dot(centre - SpacePoint{}, outward_of(rib));
    holes_.push_back({{u, centre.z}, std::max(hole.diameter_mm, hole.sink_diameter_mm) / 2});
  }
}

double RibBrass::room_at(PlatePoint centre) const {
  double room = outline_.distance_mm(centre);
  if (!outline_.holds(centre)) return -room;
  for (const PlateEdges& pocket : pockets_) {
    const double away = pocket.distance_mm(centre);
    if (pocket.holds(centre)) return -away;
    room = std::min(room, away);
  }
  for (const Disc& hole : holes_) {
    const double away = std::hypot(centre.u - hole.centre.u, centre.v - hole.centre.v) - hole.radius_mm;
    room = std::min(room, away);
  }
  return room;
}

std::optional<Stretch> widest_brass(const RibPlan& rib, HeightRange heights) {
  std::vector<HeightRange> shadows;
  PlateEdges(rib.outline, heights).append_shadows(heights, shadows);
  for (const Pocket& pocket : rib.pockets) PlateEdges(pocket.outline, heights).append_shadows(heights, shadows);
  if (shadows.empty()) return std::nullopt;
  std::sort(shadows.begin(), shadows.end(), [](HeightRange a, HeightRange b) { return a.low < b.low; });
  // Between two shadows the plate is one thing, brass or none, at all of the heights.
  const RibBrass brass(rib, {}, heights);
  const double middle_v = (heights.low + heights.high) / 2;
  Stretch best;
  double free_from = shadows.front().high;
  for (const HeightRange shadow : shadows) {
    const Stretch free{free_from, shadow.low};
    if (free.width_mm() > best.width_mm() &&
        brass.room_at({(free.from_u_mm + free.to_u_mm) / 2, middle_v}) > 0) {
      best = free;
    }
    free_from = std::max(free_from, shadow.high);
  }
  if (best.width_mm() <= 0) return std::nullopt;
  return best;
}

bool sinks_in_rib(FrameDesk& desk, const RibPlan& rib) {
  const double screw = desk.settings().screw_mm;
  const double plate = plate_thickness_mm(rib);
  if (can_sink(plate, screw)) return true;
  const double needed = head_depth_mm(screw) + 0.5;
  desk.warn(
      FrameWarning::Kind::no_room, rib.mark, plate, needed,
      fmt::format("{:g} mm of plate cannot take the sunk heads of {} screws, which need {:g} mm: the heads are "
                  "left off. Take thicker ribs or smaller screws.",
                  plate, screw_name(screw), needed));
  return false;
}

ScrewTask add_rib_screw(FrameDesk& desk, const RibScrew& screw) {
  const RibPlan& rib = *screw.rib;
  ScrewTask task;
  task.axis = {place_in(rib, screw.at, rib.set_back_mm), inward_of(rib)};
  task.screw_mm = desk.settings().screw_mm;
  task.grip_mm = plate_thickness_mm(rib);
  task.hold_mm = screw.hold_mm;
  task.sunk = sinks_in_rib(desk, rib);
  task.panel = rib.panel;
  add_clear_hole(desk.flat(rib.mark), task, task.sunk);
  const std::string mark = add_screw(desk, task);
  desk.join(mark, rib.mark);
  desk.join(mark, screw.part);
  return task;
}

std::optional<OuterEdge> outer_edge(const PlateOutline& outline, HeightRange heights) {
  OuterEdge edge{std::numeric_limits<double>::max(), std::numeric_limits<double>::lowest()};
  const auto take = [&](double u) {
    edge.least_u_mm = std::min(edge.least_u_mm, u);
    edge.most_u_mm = std::max(edge.most_u_mm, u);
  };
  for (int i = 0; i <= kEdgeSteps; ++i) {
    const auto u = rightmost_at(outline, heights.low + (heights.high - heights.low) * i / kEdgeSteps);
    if (!u) return std::nullopt;
    take(*u);
  }
  for (const PlatePoint p : outline) {
    if (p.v > heights.low && p.v < heights.high && p.u > edge.most_u_mm) take(p.u);
  }
  return edge;
}

}  // namespace prismwright
