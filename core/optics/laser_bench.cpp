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
  return one.fate == other.fate && one.cause == other.cause && one.zone == other.zone &&
         one.regular == other.regular;
}

double front_r_mm(const Section& section) {
  double front = 0;
  for (const Zone& zone : section.zones) {
    for (const Face& face : zone.profile.faces)
      for (const SectionPoint p : face.points) front = std::max(front, p.r);
    if (!zone.lower_image) continue;
    for (const Face& face : zone.lower_image->faces)
      for (const SectionPoint p : face.points) front = std::max(front, p.r);
  }
  return front;
}

double height_at_front(const RayPath& path, double front_mm) {
  const SectionPoint left = path.points.back();
  return path.aim_deg == 0 ? left.z : left.z - (front_mm - left.r) * std::tan(radians(path.aim_deg));
}

/// Gathers the fan of one band's sweep.
class FanMaker {
 public:
  FanMaker(const SectionTracer& tracer, SweepRange sweep, double front_mm, double ray_step_deg, RayFan& fan)
      : tracer_(tracer), sweep_(sweep), front_mm_(front_mm), ray_step_deg_(ray_step_deg), fan_(fan) {}

  void gather(const std::vector<LampStrip>& strips) {
    for (const LampStrip& strip : strips) {
      if (strip.band != sweep_.band) continue;
      trace_run({strip.from_deg, strip.to_deg});
    }
  }

  void gather(int steps) {
    const double step = (sweep_.to_deg - sweep_.from_deg) / steps;
    double run_from = sweep_.from_deg;
    RayPath last = trace(sweep_.from_deg + 0.5 * step);
    for (int i = 1; i <= steps; ++i) {
      widen(last);
      const double edge = sweep_.from_deg + i * step;
      if (i < steps) {
        RayPath next = trace(edge + 0.5 * step);
        const bool goes_on = same_run(last, next);
        last = std::move(next);
        if (goes_on) continue;
      }
      trace_run({run_from, edge});
      run_from = edge;
    }
  }

 private:
  [[nodiscard]] RayPath trace(double elevation_deg) const { return tracer_.trace(elevation_deg, sweep_.band); }

  void widen(const RayPath& path) {
    if (path.fate != Fate::level) return;
    const double z = height_at_front(path, front_mm_);
    if (!fan_.beam) fan_.beam = BeamStrip{z, z};
    fan_.beam->from_mm = std::min(fan_.beam->from_mm, z);
    fan_.beam->to_mm = std::max(fan_.beam->to_mm, z);
  }

  /// Traces the run's share of an even grid, or its middle where the grid has no line in it.
  void trace_run(Run run) {
    bool any = false;
    for (double line = std::ceil((run.from_deg - sweep_.from_deg) / ray_step_deg_ - 0.5);; ++line) {
      const double elevation = sweep_.from_deg + (line + 0.5) * ray_step_deg_;
      if (elevation >= run.to_deg) break;
      fan_.rays.push_back(trace(elevation));
      any = true;
    }
    if (!any) fan_.rays.push_back(trace(0.5 * (run.from_deg + run.to_deg)));
  }

  const SectionTracer& tracer_;
  SweepRange sweep_;
  double front_mm_;
  double ray_step_deg_;
  RayFan& fan_;
};

}  // namespace

double last_direction_deg(const RayPath& path) {
  return path.meetings.empty() ? path.elevation_deg : path.meetings.back().direction_deg;
}

std::optional<BoardSpot> spot_on_board(const RayPath& path, double board_mm) {
  if (!leaves_lens(path) || path.points.empty()) return std::nullopt;
  const SectionPoint from = path.points.back();
  const double slope = last_direction_deg(path);
  const double run_mm = board_mm - from.r;
  if (run_mm < 0 || std::abs(slope) >= 90) return std::nullopt;
  const double over = run_mm * std::tan(radians(slope));
  return BoardSpot{{board_mm, from.z + over}, slope, over + run_mm * std::tan(radians(path.aim_deg))};
}

std::optional<double> beam_height_mm(const RayPath& path, const Section& section) {
  if (!leaves_lens(path) || path.meetings.empty()) return std::nullopt;
  return height_at_front(path, front_r_mm(section));
}

std::optional<SectionPoint> place_of_loss(const RayPath& path) {
  if (leaves_lens(path) || path.points.size() < 2) return std::nullopt;
  if (path.fate == Fate::lost_reflecting)
    for (const RayMeeting& meeting : path.meetings)
      if (meeting.face == FaceRole::reflecting) return meeting.place;
  return path.points.back();
}

RayFan fan_of_rays(const SectionTracer& tracer, const Section& section, int rays, int steps) {
  RayFan fan;
  const std::vector<SweepRange> sweeps = tracer.sweeps();
  double span = 0;
  for (const SweepRange& sweep : sweeps) span += sweep.to_deg - sweep.from_deg;
  if (span <= 0 || rays < 1 || steps < 1) return fan;
  const double front = front_r_mm(section);
  for (const SweepRange& sweep : sweeps) {
    const double share = (sweep.to_deg - sweep.from_deg) / span;
    FanMaker(tracer, sweep, front, span / rays, fan)
        .gather(std::max(1, static_cast<int>(std::ceil(steps * share))));
  }
  return fan;
}

RayFan fan_of_rays(const SectionTracer& tracer, const Section& section, const Proof& proof, int rays) {
  RayFan fan;
  const std::vector<SweepRange> sweeps = tracer.sweeps();
  double span = 0;
  for (const SweepRange& sweep : sweeps) span += sweep.to_deg - sweep.from_deg;
  if (span <= 0 || rays < 1) return fan;
  const double front = front_r_mm(section);
  for (const SweepRange& sweep : sweeps) FanMaker(tracer, sweep, front, span / rays, fan).gather(proof.lamp);
  for (const LightStrip& strip : proof.beam) {
    if (strip.dark()) continue;
    if (!fan.beam) fan.beam = BeamStrip{strip.from_mm, strip.to_mm};
    fan.beam->from_mm = std::min(fan.beam->from_mm, strip.from_mm);
    fan.beam->to_mm = std::max(fan.beam->to_mm, strip.to_mm);
  }
  return fan;
}

double middle_deg(const Zone& zone) { return 0.5 * (zone.from_deg + zone.to_deg); }

double image_middle_deg(const Section& section, const Zone& zone) {
  const double tilt = section.input.refracting_about_lens ? 0 : section.aim_of(zone.kind).aim_deg;
  return -(middle_deg(zone) + tilt) - tilt;
}

std::vector<LaserStop> laser_stops(const Section& section) {
  std::vector<LaserStop> stops;
  for (const Zone& zone : section.zones) {
    stops.push_back({zone.mark, band_of(zone.kind), middle_deg(zone)});
    if (zone.kind == ZoneKind::ring)
      stops.push_back({zone.mark, Band::refracting, image_middle_deg(section, zone)});
  }
  const auto rank = [](Band band) { return band == Band::lower ? 0 : band == Band::refracting ? 1 : 2; };
  std::sort(stops.begin(), stops.end(), [&](const LaserStop& a, const LaserStop& b) {
    return a.band == b.band ? a.elevation_deg < b.elevation_deg : rank(a.band) < rank(b.band);
  });
  return stops;
}

std::vector<double> zone_middles_deg(const Section& section) {
  std::vector<double> middles;
  for (const LaserStop& stop : laser_stops(section)) middles.push_back(stop.elevation_deg);
  std::sort(middles.begin(), middles.end());
  return middles;
}

}  // namespace prismwright
