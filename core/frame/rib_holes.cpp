#include "core/frame/rib_holes.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace prismwright {
namespace {

constexpr double kSliver_mm2 = 1e-4;
constexpr int kEdgeSteps = 24;

double distance_to(const PlateOutline& outline, PlatePoint p) {
  double least2 = std::numeric_limits<double>::max();
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const PlatePoint a = outline[i];
    const PlatePoint b = outline[i + 1 < outline.size() ? i + 1 : 0];
    const double du = b.u - a.u;
    const double dv = b.v - a.v;
    const double length2 = du * du + dv * dv;
    const double share =
        length2 > 0 ? std::clamp(((p.u - a.u) * du + (p.v - a.v) * dv) / length2, 0.0, 1.0) : 0;
    const double away_u = p.u - a.u - share * du;
    const double away_v = p.v - a.v - share * dv;
    least2 = std::min(least2, away_u * away_u + away_v * away_v);
  }
  return std::sqrt(least2);
}

bool is_inside(const PlateOutline& outline, PlatePoint p) {
  bool inside = false;
  for (std::size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
    const PlatePoint a = outline[i];
    const PlatePoint b = outline[j];
    if ((a.v > p.v) != (b.v > p.v) && p.u < (b.u - a.u) * (p.v - a.v) / (b.v - a.v) + a.u) inside = !inside;
  }
  return inside;
}

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

RibBrass::RibBrass(const RibPlan& rib, const FlatPart& plate) : rib_(rib) {
  for (const PlateHole& hole : plate.holes) {
    const SpacePoint centre = plate.place.out_of(SpacePoint{hole.centre.u, hole.centre.v, 0});
    const double u = dot(centre - SpacePoint{}, outward_of(rib));
    holes_.push_back({{u, centre.z}, std::max(hole.diameter_mm, hole.sink_diameter_mm) / 2});
  }
}

double RibBrass::room_at(PlatePoint centre) const {
  double room = distance_to(rib_.outline, centre);
  if (!is_inside(rib_.outline, centre)) return -room;
  for (const Pocket& pocket : rib_.pockets) {
    const double away = distance_to(pocket.outline, centre);
    if (is_inside(pocket.outline, centre)) return -away;
    room = std::min(room, away);
  }
  for (const Disc& hole : holes_) {
    const double away = std::hypot(centre.u - hole.centre.u, centre.v - hole.centre.v) - hole.radius_mm;
    room = std::min(room, away);
  }
  return room;
}

std::optional<Stretch> widest_brass(const RibPlan& rib, HeightRange heights) {
  const PlateExtent extent = extent_of({rib.outline});
  const PlateRegion strip{plate_rectangle({extent.low.u, heights.low}, {extent.high.u, heights.high})};
  std::vector<PlateOutline> pockets;
  for (const Pocket& pocket : rib.pockets) pockets.push_back(pocket.outline);
  const PlateRegion brass = first_less_second({rib.outline}, united(pockets));
  std::vector<Stretch> blocked;
  for (const PlateOutline& outline : first_less_second(strip, brass)) {
    if (signed_area_mm2(outline) < kSliver_mm2) continue;
    const PlateExtent taken = extent_of({outline});
    blocked.push_back({taken.low.u, taken.high.u});
  }
  std::sort(blocked.begin(), blocked.end(),
            [](const Stretch& a, const Stretch& b) { return a.from_u_mm < b.from_u_mm; });
  blocked.push_back({extent.high.u, extent.high.u});
  Stretch best;
  double free_from = extent.low.u;
  for (const Stretch& taken : blocked) {
    const Stretch free{free_from, taken.from_u_mm};
    if (free.width_mm() > best.width_mm()) best = free;
    free_from = std::max(free_from, taken.to_u_mm);
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
