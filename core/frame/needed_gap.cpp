#include "core/frame/needed_gap.h"

#include <algorithm>
#include <cmath>

namespace prismwright {

double expansion_per_k(std::string_view material) {
  if (material == "crown") return 9e-6;
  if (material == "n-bk7") return 7.1e-6;
  return 7e-5;
}

double needed_gap_mm(double extent_mm, std::string_view material, double heat_range_k) {
  return extent_mm / 2 * std::abs(expansion_per_k(material) - kBrassExpansion_per_k) * heat_range_k;
}

bool swells(std::string_view material) { return material != "crown" && material != "n-bk7"; }

PrismGrowth growth_of(double extent_mm, std::string_view material, const FrameSettings& frame) {
  const double moisture = swells(material) ? extent_mm / 2 * frame.moisture_percent / 100 : 0;
  return {needed_gap_mm(extent_mm, material, frame.heat_range_k), moisture};
}

double needed_at_end_mm(double length_mm, std::string_view material, const FrameSettings& frame) {
  return growth_of(length_mm, material, frame).both_mm();
}

double needed_at_side_mm(double extent_mm, std::string_view material, const FrameSettings& frame) {
  return std::max(frame.shim_mm, frame.glazing_mm) + growth_of(extent_mm, material, frame).both_mm();
}

double needed_between_mm(double first_extent_mm, double second_extent_mm, std::string_view material,
                         const FrameSettings& frame) {
  return growth_of(first_extent_mm, material, frame).both_mm() +
         growth_of(second_extent_mm, material, frame).both_mm();
}

double section_extent_mm(const Profile& profile) {
  const auto points = polygon_of(profile, 0.1);
  double most = 0;
  for (const SectionPoint a : points) {
    for (const SectionPoint b : points) most = std::max(most, distance(a, b));
  }
  return most;
}

}  // namespace prismwright
