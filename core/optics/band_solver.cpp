#include "core/optics/band_solver.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/optics/refracting_zone.h"
#include "core/optics/refraction.h"

namespace prismwright {

namespace {

constexpr std::size_t kMostZones = 60;
constexpr double kSteepest_deg = 60;  ///< above it the outer face is all but grazed

/// Lower and upper elevation of one zone, radians.
struct Limits {
  double from;
  double to;
};

/// Where the next ring starts above a joint at elevation `joint`, with the setting gap.
double start_above(const RefractingBand& band, double joint, double gap_mm) {
  if (gap_mm <= 0) return joint;
  const double slope = band.joint == Joint::along_ray ? std::cos(elevation_inside(joint, band.index)) : 1.0;
  return std::atan(std::tan(joint) + gap_mm / (slope * band.focal_mm));
}

Outcome<std::vector<Limits>> limits_from_margins(const RefractingBand& band, const SectionSettings& settings) {
  std::vector<Limits> limits;
  double from = 0;
  for (std::size_t i = 0; i < settings.refracting_margins_mm.size(); ++i) {
    const double margin = settings.refracting_margins_mm[i];
    const double to = band.elevation_of_margin(margin);
    const std::string zone = i == 0 ? "C" : fmt::format("R{}", i);
    if (!(to > from)) {
      return request_problem("margins.rise", "section.refracting_margins_mm",
                             fmt::format("section.refracting_margins_mm: margin {:g} mm of zone {} does not "
                                         "lie beyond the zone inside it, which with its "
                                         "setting gap ends at {:.3f} mm. Give margins that rise",
                                         margin, zone, band.margin_of_elevation(from)));
    }
    if (degrees(to) > kSteepest_deg) {
      return request_problem("band.too_steep", "section.refracting_margins_mm",
                             fmt::format("section.refracting_margins_mm: zone {} with margin {:g} mm reaches "
                                         "{:.2f} deg; a refracting ring can serve no more "
                                         "than {:g} deg. Leave the light above to reflecting prisms",
                                         zone, margin, degrees(to), kSteepest_deg));
    }
    limits.push_back({from, to});
    from = start_above(band, to, settings.gap_mm);
  }
  return limits;
}

/// Zones of one thickness from the axis until `end` is reached or passed; empty when there would be too many.
std::vector<Limits> divide(const RefractingBand& band, double gap_mm, double thickness_mm, double end) {
  std::vector<Limits> limits;
  double from = 0;
  while (from < end && limits.size() < kMostZones) {
    const double to = band.elevation_of_thickness(from, thickness_mm);
    limits.push_back({from, to});
    from = start_above(band, to, gap_mm);
  }
  if (limits.empty() || limits.back().to < end) limits.clear();
  return limits;
}

Outcome<std::vector<Limits>> limits_by_thickness(const RefractingBand& band, const SectionSettings& settings) {
  const double end = radians(settings.refracting_to_deg);
  double high = settings.ring_growth_mm;
  std::vector<Limits> limits = divide(band, settings.gap_mm, band.edge_mm + high, end);
  // The end may lie in the setting gap after the last zone; a little thinner, one more zone serves it.
  for (int i = 0; i < 40 && limits.empty(); ++i) {
    high *= 0.98;
    limits = divide(band, settings.gap_mm, band.edge_mm + high, end);
  }
  if (limits.empty()) {
    return request_problem(
        "band.too_many", "section.ring_growth_mm",
        fmt::format("a growth of {:g} mm would divide the refracting band into more than {} zones. Make "
                    "section.ring_growth_mm larger",
                    settings.ring_growth_mm, kMostZones));
  }
  // The same number of zones, all as thin as they can be.
  const std::size_t count = limits.size();
  double low = 0;
  for (int i = 0; i < 26; ++i) {
    const double middle = 0.5 * (low + high);
    std::vector<Limits> thinner = divide(band, settings.gap_mm, band.edge_mm + middle, end);
    const bool reaches = !thinner.empty() && thinner.size() <= count;
    (reaches ? high : low) = middle;
    if (reaches) limits = std::move(thinner);
  }
  limits.back().to = end;
  return limits;
}

Outcome<Zone> make_zone(const RefractingBand& band, std::size_t number, Limits limits) {
  Zone zone;
  zone.kind = number == 0 ? ZoneKind::centre : ZoneKind::ring;
  zone.mark = number == 0 ? "C" : fmt::format("R{}", number);
  zone.number = static_cast<int>(number);
  zone.from_deg = number == 0 ? -degrees(limits.to) : degrees(limits.from);
  zone.to_deg = degrees(limits.to);
  auto profile = number == 0 ? band.centre(limits.to) : band.ring(limits.from, limits.to);
  if (!profile) {
    Problem problem = profile.problem();
    problem.where = zone.mark;
    problem.text = fmt::format("zone {}: {}", zone.mark, problem.text);
    return problem;
  }
  zone.profile = std::move(*profile);
  for (const SectionPoint p : points_along(*zone.profile.find(FaceRole::outer), 0.05)) {
    zone.thickness_mm = std::max(zone.thickness_mm, p.r - band.focal_mm);
  }
  return zone;
}

}  // namespace

Outcome<std::vector<Zone>> solve_band(const SectionInput& input) {
  const SectionSettings& settings = input.settings;
  const RefractingBand band{input.focal_mm, input.index, settings.edge_mm, settings.faces, settings.joint};
  auto limits = settings.refracting_margins_mm.empty() ? limits_by_thickness(band, settings)
                                                       : limits_from_margins(band, settings);
  if (!limits) return limits.problem();
  std::vector<Zone> zones;
  for (std::size_t i = 0; i < limits->size(); ++i) {
    auto zone = make_zone(band, i, (*limits)[i]);
    if (!zone) return zone.problem();
    zones.push_back(std::move(*zone));
  }
  return zones;
}

}  // namespace prismwright
