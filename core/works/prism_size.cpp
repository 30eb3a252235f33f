#include "core/works/prism_size.h"

#include <cmath>

#include "core/base/angle.h"
#include "core/lens/trimmed_volume.h"
#include "core/works/greatest_circle.h"
#include "core/works/prism_reach.h"

namespace prismwright {

namespace {

constexpr double kChord_mm = 2e-4;
constexpr double kMm3PerCm3 = 1000;

}  // namespace

PrismSize prism_size(const PlannedPrism& prism, double density_g_cm3) {
  const PrismReach reach(prism);
  const double turn = reach.middle_azimuth();
  const auto length = reach.along({-std::sin(turn), std::cos(turn), 0});
  const auto depth = reach.along({std::cos(turn), std::sin(turn), 0});
  const auto height = reach.along({0, 0, 1});
  if (!length || !depth || !height) return {};
  PrismSize size;
  size.length_mm = length->length();
  size.depth_mm = depth->length();
  size.height_mm = height->length();
  size.turn_deg = degrees(turn);
  size.volume_mm3 = trimmed_volume_mm3(prism);
  size.thickest_mm = greatest_circle(whole_section(prism.profile, kChord_mm)).diameter_mm;
  size.mass_g = size.volume_mm3 * density_g_cm3 / kMm3PerCm3;
  return size;
}

}  // namespace prismwright
