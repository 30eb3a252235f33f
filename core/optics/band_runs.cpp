#include "core/optics/band_runs.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/base/root.h"
#include "core/optics/refraction.h"

namespace prismwright {

namespace {

constexpr double kNothing = 1e-9;  ///< radians: a run as short as this is empty
constexpr int kHalvings = 40;
constexpr double kSettled = 1e-12;  ///< radians of a run's end

struct Run {
  double from = 0;
  double end = 0;
  [[nodiscard]] bool empty() const { return end - from < kNothing; }
};

using Zones = std::vector<ZoneLimits>;

/// Area of an outline of faces, mm2: the polygon of its points and the segments over its curves.
double quick_area_mm2(const Profile& profile) {
  double area = 0;
  for (const Face& face : profile.faces) {
    for (std::size_t i = 0; i + 1 < face.points.size(); ++i) {
      const SectionPoint p = face.points[i];
      const SectionPoint q = face.points[i + 1];
      area += 0.5 * (p.r * q.z - q.r * p.z);
      if (face.kind != FaceKind::true_curve) continue;
      const double turn = std::asin(cross(face.tangents[i], face.tangents[i + 1]));
      area += turn * distance(p, q) * distance(p, q) / 12;
    }
    if (face.kind != FaceKind::arc) continue;
    const SectionOffset a = face.start() - face.centre;
    const SectionOffset b = face.end() - face.centre;
    const double turn = std::atan2(cross(a, b), dot(a, b));
    area += 0.5 * face.radius_mm * face.radius_mm * (turn - std::sin(turn));
  }
  return area;
}

/// One rule's measure of a zone, and the zone that has a wanted measure.
class Measure {
 public:
  Measure(const RefractingBand& band, Division division) : band_(band), division_(division) {}

  [[nodiscard]] double of(double from, double to) const {
    switch (division_) {
      case Division::area:
        return area(from, to);
      case Division::height:
        return band_.margin_of_elevation(to) - (from > 0 ? band_.margin_of_elevation(from) : 0);
      default:
        return band_.thickness(from, to) - band_.edge_mm;
    }
  }

  /// Whether the measure grows as the square of a zone's breadth.
  [[nodiscard]] bool square() const { return division_ == Division::thickness || division_ == Division::count; }

  [[nodiscard]] double end_of(double from, double wanted) const {
    if (division_ == Division::height)
      return band_.elevation_of_margin((from > 0 ? band_.margin_of_elevation(from) : 0) + wanted);
    if (division_ != Division::area) return band_.elevation_of_thickness(from, band_.edge_mm + wanted);
    return end_by_area(from, wanted);
  }

 private:
  [[nodiscard]] double area(double from, double to) const {
    const auto profile = from > 0 ? band_.ring(from, to) : band_.centre(to);
    if (!profile) return 0;
    return quick_area_mm2(*profile) * (from > 0 ? 1 : 0.5);
  }

  [[nodiscard]] double end_by_area(double from, double wanted) const {
    const double steepest = std::min(from + 0.5, radians(80));
    const double at_steepest = area(from, steepest) - wanted;
    if (at_steepest <= 0) return steepest;
    return find_root([&](double to) { return area(from, to) - wanted; }, {from, -wanted, steepest, at_steepest},
                     from + 0.1, 1e-9 * wanted);
  }

  const RefractingBand& band_;
  Division division_;
};

class Divider {
 public:
  Divider(const RefractingBand& band, const SectionSettings& settings)
      : band_(band), settings_(settings), measure_(band, settings.refracting.division) {}

  /// Zones of one measure until the end is reached or passed, `most` at the utmost. The end is not served when
  /// it lies beyond those or in the setting gap after the last.
  struct Laid {
    Zones zones;
    bool serves_end = false;
  };
  [[nodiscard]] Laid lay(const Run& run, double wanted, std::size_t most) const {
    Laid laid;
    double from = run.from;
    while (from < run.end && laid.zones.size() < most) {
      const double to = measure_.end_of(from, wanted);
      laid.zones.push_back({from, to, false});
      laid.serves_end = to >= run.end;
      from = start_above(band_, to, settings_.gap_mm);
    }
    return laid;
  }

  /// So many zones at most, all of the least measure with which they reach the end. `high` must be enough.
  [[nodiscard]] Zones least(const Run& run, Zones zones, double high) const {
    const std::size_t count = zones.size();
    double low = 0;
    for (int i = 0; i < kHalvings && high - low > 1e-13 * high; ++i) {
      const double middle = 0.5 * (low + high);
      Laid trial = lay(run, middle, count);
      (trial.serves_end ? high : low) = middle;
      if (trial.serves_end) zones = std::move(trial.zones);
    }
    zones.back().to = run.end;
    return zones;
  }

  /// As few zones as keep within the growth.
  [[nodiscard]] Outcome<Zones> by_thickness(const Run& run) const {
    double high = settings_.ring_growth_mm;
    Laid trial = lay(run, high, kMostRefractingZones);
    // The end may lie in the setting gap after the last zone; thinner, one more zone serves it.
    while (!trial.serves_end && trial.zones.size() < kMostRefractingZones &&
           high > 1e-3 * settings_.ring_growth_mm) {
      high *= 0.98;
      trial = lay(run, high, kMostRefractingZones);
    }
    if (!trial.serves_end) {
      return request_problem(
          "band.too_many", "section.ring_growth_mm",
          fmt::format("a growth of {:g} mm would divide the refracting band into more than {} zones. Make "
                      "section.ring_growth_mm larger",
                      settings_.ring_growth_mm, kMostRefractingZones));
    }
    return least(run, std::move(trial.zones), high);
  }

  /// Exactly so many zones of one measure.
  [[nodiscard]] Zones by_count(const Run& run, int count) const {
    const double whole = measure_.of(run.from, run.end);
    const double wanted = count == 1 ? whole
                                     : find_root([&](double measure) { return overreach(run, measure, count); },
                                                 {0, run.from - run.end, whole, overreach(run, whole, count)},
                                                 whole / (measure_.square() ? count * count : count), kSettled);
    Zones zones;
    double from = run.from;
    for (int i = 0; i < count; ++i) {
      zones.push_back({from, i + 1 < count ? measure_.end_of(from, wanted) : run.end, false});
      from = start_above(band_, zones.back().to, settings_.gap_mm);
    }
    return zones;
  }

  [[nodiscard]] double measure_of(const Zones& zones) const {
    double most = 0;
    for (const ZoneLimits& zone : zones) most = std::max(most, measure_.of(zone.from, zone.to));
    return most;
  }

 private:
  /// What so many zones of one measure reach beyond the end of the run, radians (negative: they fall short).
  [[nodiscard]] double overreach(const Run& run, double wanted, int count) const {
    double from = run.from;
    for (int i = 0; i < count; ++i) {
      const double to = measure_.end_of(from, wanted);
      if (to >= run.end || i + 1 == count) return to - run.end + (count - 1 - i) * (run.end - run.from);
      from = start_above(band_, to, settings_.gap_mm);
      if (from >= run.end) return (count - 1 - i) * (run.end - run.from);
    }
    return 0;
  }

  const RefractingBand& band_;
  const SectionSettings& settings_;
  Measure measure_;
};

std::vector<Run> runs_between(const RefractingBand& band, double gap_mm, double end, const Zones& locked) {
  std::vector<Run> runs;
  double from = 0;
  for (const ZoneLimits& zone : locked) {
    runs.push_back({from, zone.from > 0 ? joint_below(band, zone.from, gap_mm) : 0});
    from = start_above(band, zone.to, gap_mm);
  }
  runs.push_back({from, end});
  return runs;
}

Outcome<std::vector<Zones>> filled_by_count(const Divider& divider, const std::vector<Run>& runs, int count,
                                            int locked) {
  std::vector<Zones> filled(runs.size());
  std::vector<double> measures(runs.size(), -1);
  int left = count - locked;
  const auto settle = [&](std::size_t i) {
    filled[i] = divider.by_count(runs[i], static_cast<int>(filled[i].size()) + 1);
    measures[i] = divider.measure_of(filled[i]);
    left -= 1;
  };
  const auto open = std::count_if(runs.begin(), runs.end(), [](const Run& run) { return !run.empty(); });
  if (left < open) {
    return request_problem("band.count", "section.refracting_count",
                           fmt::format("{} zones are too few: {} are locked and {} runs lie between them. Ask "
                                       "for {} or more, or free some",
                                       count, locked, open, locked + open));
  }
  if (open == 1) {
    const auto only = std::find_if(runs.begin(), runs.end(), [](const Run& run) { return !run.empty(); });
    filled[static_cast<std::size_t>(only - runs.begin())] = divider.by_count(*only, left);
    return filled;
  }
  for (std::size_t i = 0; i < runs.size(); ++i)
    if (!runs[i].empty()) settle(i);
  while (left > 0 && open > 0)
    settle(static_cast<std::size_t>(std::max_element(measures.begin(), measures.end()) - measures.begin()));
  return filled;
}

/// Setting gaps wide enough leave zones no breadth at all, or end before they begin.
bool all_hold_glass(const std::vector<Zones>& filled) {
  constexpr double kLeastBreadth = 1e-4;  // radians: hundredths of a mm at any focal distance
  return std::ranges::all_of(filled, [](const Zones& zones) {
    return std::ranges::all_of(zones,
                               [](const ZoneLimits& zone) { return zone.to - zone.from > kLeastBreadth; });
  });
}

Problem no_glass(int count) {
  return request_problem("band.count", "section.refracting_count",
                         fmt::format("{} zones are too many for the refracting band: the gaps between them "
                                     "(section.gap_mm) leave no room for glass. Ask for fewer zones or "
                                     "smaller gaps",
                                     count));
}

Outcome<std::vector<Zones>> filled_runs(const Divider& divider, const std::vector<Run>& runs,
                                        const BandSettings& settings, int locked) {
  if (settings.division != Division::thickness && settings.division != Division::side) {
    auto filled = filled_by_count(divider, runs, settings.count, locked);
    if (filled && !all_hold_glass(*filled)) return no_glass(settings.count);
    return filled;
  }
  std::vector<Zones> filled(runs.size());
  for (std::size_t i = 0; i < runs.size(); ++i) {
    if (runs[i].empty()) continue;
    auto zones = divider.by_thickness(runs[i]);
    if (!zones) return zones.problem();
    filled[i] = std::move(*zones);
  }
  return filled;
}

}  // namespace

double start_above(const RefractingBand& band, double joint, double gap_mm) {
  if (gap_mm <= 0) return joint;
  const double slope = band.joint == Joint::along_ray ? std::cos(elevation_inside(joint, band.index)) : 1.0;
  return std::atan(std::tan(joint) + gap_mm / (slope * band.focal_mm));
}

double joint_below(const RefractingBand& band, double start, double gap_mm) {
  double joint = start;
  for (int i = 0; i < 60; ++i) {
    const double off = start_above(band, joint, gap_mm) - start;
    joint -= off;
    if (std::abs(off) < 1e-16) break;
  }
  return joint;
}

Outcome<std::vector<ZoneLimits>> divide_refracting(const RefractingBand& band, const SectionSettings& settings,
                                                   double end, const std::vector<ZoneLimits>& locked) {
  const auto runs = runs_between(band, settings.gap_mm, end, locked);
  const auto filled =
      filled_runs(Divider(band, settings), runs, settings.refracting, static_cast<int>(locked.size()));
  if (!filled) return filled.problem();
  Zones all;
  for (std::size_t i = 0; i < runs.size(); ++i) {
    all.insert(all.end(), (*filled)[i].begin(), (*filled)[i].end());
    if (i < locked.size()) all.push_back(locked[i]);
  }
  return all;
}

}  // namespace prismwright
