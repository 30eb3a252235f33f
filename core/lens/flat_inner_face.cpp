#include "core/lens/flat_inner_face.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/angle.h"

namespace prismwright {

namespace {

constexpr double kMostEdge_mm = 60;  // of section.edge_mm

double least_r(const Profile& profile) {
  double least = std::numeric_limits<double>::infinity();
  const Face* outer = profile.find(FaceRole::outer);
  if (!outer) return least;
  for (const SectionPoint p : outer->points) least = std::min(least, p.r);
  return least;
}

/// Where the thinnest outer edge of the band stands, from the lens axis.
double outer_edge_mm(const Section& section) {
  double least = std::numeric_limits<double>::infinity();
  for (const Zone& zone : section.zones) {
    if (!is_refracting(zone.kind)) continue;
    least = std::min({least, least_r(zone.profile), least_r(lower_image_of(zone))});
  }
  return least;
}

double rounded_down(double value) { return std::floor(value * 10) / 10; }
double rounded_up(double value) { return std::ceil(value * 10) / 10; }

/// What the maker may do about it.
std::string ways_out(const LensValues& values, const Panel& panel, double facet_mm, double edge_mm) {
  const double f = values.brief.focal_mm;
  std::string ways;
  const double most_cos = edge_mm > kLeastFacetGlass_mm ? f / (edge_mm - kLeastFacetGlass_mm) : 2;
  const double widest = most_cos < 1 ? 2 * (degrees(std::acos(most_cos)) - std::abs(panel.axis_shift_deg)) : 0;
  if (rounded_down(widest) > 0)
    ways = fmt::format("Make the panel at most {:g} deg wide, ", rounded_down(widest));
  const double edge = rounded_up(values.section.edge_mm + facet_mm + kLeastFacetGlass_mm - edge_mm);
  if (edge <= kMostEdge_mm) {
    ways += fmt::format("{} section.edge_mm to at least {:g} mm, ", ways.empty() ? "Raise" : "raise", edge);
  }
  return ways + (ways.empty() ? "Choose section.inner_face hollow" : "or choose section.inner_face hollow");
}

}  // namespace

bool has_flat_facets(const LensValues& values) {
  return values.section.inner_face == InnerFace::flat && values.turns_about_lens(Band::refracting);
}

Done check_flat_facets(const LensValues& values, const Section& section) {
  if (!has_flat_facets(values)) return {};
  const double edge_mm = outer_edge_mm(section);
  if (!std::isfinite(edge_mm)) return {};  // no refracting zone
  for (std::size_t i = 0; i < values.panels.size(); ++i) {
    const Panel& panel = values.panels[i];
    if (panel.blind) continue;
    const double side_deg = panel.width_deg / 2 + std::abs(panel.axis_shift_deg);
    const double cosine = std::cos(radians(side_deg));
    const double facet_mm = cosine > 1e-6 ? values.brief.focal_mm / cosine : 1e9;
    if (facet_mm <= edge_mm - kLeastFacetGlass_mm) continue;
    const std::string place = facet_mm < 1e6 ? fmt::format("{:.2f} mm from the lens axis", facet_mm)
                                             : std::string("beyond all glass");
    return request_problem(
        "facet.thin", "panels.widths_deg",
        fmt::format("panel {} is {:g} deg wide, and at its sides a flat inner face stands {}; the outer edge "
                    "stands at {:.2f} mm, and {:g} mm of glass must be left between them. {}",
                    i + 1, panel.width_deg, place, edge_mm, kLeastFacetGlass_mm,
                    ways_out(values, panel, facet_mm, edge_mm)));
  }
  return {};
}

}  // namespace prismwright
