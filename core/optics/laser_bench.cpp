#include "core/optics/laser_bench.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"

namespace prismwright {
namespace {

/// Neighbouring elevations that share a fate in one zone.
struct Run {
  double from_deg;
  double to_deg;
};

bool same_run(const RayPath& one, const RayPath& other) {
  return one.fate == other.fate && one.zone == other.zone && one.regular == other.regular;
}

void widen(std::optional<BeamStrip>& beam, const RayPath& path) {
  if (path.fate != Fate::level || path.points.empty()) return;
  const double z = path.points.back().z;
  if (!beam) beam = BeamStrip{z, z};
  beam->from_mm = std::min(beam->from_mm, z);
  beam->to_mm = std::max(beam->to_mm, z);
}

/// Traces the run's share of an even grid, or its middle where the grid has no line in it.
void trace_run(const SectionTracer& tracer, Run run, double grid_from_deg, double grid_step_deg,
               std::vector<RayPath>& rays) {
  const double first = std::ceil((run.from_deg - grid_from_deg) / grid_step_deg - 0.5);
  bool any = false;
  for (double line = first;; ++line) {
    const double elevation = grid_from_deg + (line + 0.5) * grid_step_deg;
    if (elevation >= run.to_deg) break;
    rays.push_back(tracer.trace(elevation));
    any = true;
  }
  if (!any) rays.push_back(tracer.trace(0.5 * (run.from_deg + run.to_deg)));
}

}  // namespace

double last_direction_deg(const RayPath& path) {
  return path.meetings.empty() ? path.elevation_deg : path.meetings.back().direction_deg;
}

std::optional<BoardSpot> spot_on_board(const RayPath& path, double board_mm) {
  if (!leaves_lens(path.fate) || path.points.empty()) return std::nullopt;
  const SectionPoint from = path.points.back();
  const double slope = last_direction_deg(path);
  const double run_mm = board_mm - from.r;
  if (run_mm < 0 || std::abs(slope) >= 90) return std::nullopt;
  const double over = run_mm * std::tan(radians(slope));
  return BoardSpot{{board_mm, from.z + over}, slope, over};
}

RayPath with_drawn_end(RayPath path, const Section& section) {
  const double f = section.input.focal_mm;
  if (path.fate == Fate::stopped && path.points.size() == 1)
    path.points.push_back({f, f * std::tan(radians(path.elevation_deg))});
  return path;
}

std::optional<SectionPoint> place_of_loss(const RayPath& path) {
  if (leaves_lens(path.fate) || path.points.size() < 2) return std::nullopt;
  if (path.fate == Fate::lost_reflecting)
    for (const RayMeeting& meeting : path.meetings)
      if (meeting.face == FaceRole::reflecting) return meeting.place;
  return path.points.back();
}

RayFan fan_of_rays(const SectionTracer& tracer, const Section& section, int rays, int steps) {
  RayFan fan;
  const double span = section.highest_deg - section.lowest_deg;
  if (span <= 0 || rays < 1 || steps < 1) return fan;
  const double step = span / steps;
  double run_from = section.lowest_deg;
  RayPath last = tracer.trace(section.lowest_deg + 0.5 * step);
  for (int i = 1; i <= steps; ++i) {
    widen(fan.beam, last);
    const double edge = section.lowest_deg + i * step;
    if (i < steps) {
      RayPath next = tracer.trace(edge + 0.5 * step);
      const bool goes_on = same_run(last, next);
      last = std::move(next);
      if (goes_on) continue;
    }
    trace_run(tracer, {run_from, edge}, section.lowest_deg, span / rays, fan.rays);
    run_from = edge;
  }
  for (RayPath& path : fan.rays) path = with_drawn_end(std::move(path), section);
  return fan;
}

double middle_deg(const Zone& zone) {
  return zone.kind == ZoneKind::centre ? 0 : 0.5 * (zone.from_deg + zone.to_deg);
}

std::vector<double> zone_middles_deg(const Section& section) {
  std::vector<double> middles;
  for (const Zone& zone : section.zones) {
    middles.push_back(middle_deg(zone));
    if (zone.kind == ZoneKind::ring) middles.push_back(-middle_deg(zone));
  }
  std::sort(middles.begin(), middles.end());
  return middles;
}

}  // namespace prismwright
