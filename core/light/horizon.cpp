#include "core/light/horizon.h"

#include <algorithm>
#include <cmath>

namespace prismwright {

namespace {

constexpr double kStep_deg = 0.25;

double all_at(const std::vector<PanelCurve>& curves, double azimuth_deg) {
  double cd = 0;
  for (const PanelCurve& curve : curves)
    if (!curve.cd.empty()) cd += curve.at(std::remainder(azimuth_deg - curve.axis_deg, 360));
  return cd;
}

}  // namespace

Horizon horizon_of(const std::vector<PanelCurve>& curves, const std::vector<PanelPlace>& places) {
  std::vector<double> seen;
  Horizon horizon;
  for (std::size_t i = 0; i < curves.size(); ++i) {
    if (curves[i].cd.empty()) continue;
    const double width = places[i].to_deg - places[i].from_deg;
    horizon.lit_deg += width;
    const int steps = std::max(1, static_cast<int>(std::lround(width / kStep_deg)));
    for (int k = 0; k < steps; ++k)
      seen.push_back(all_at(curves, places[i].from_deg + (k + 0.5) * width / steps));
  }
  if (seen.empty()) return horizon;
  for (const double cd : seen) horizon.mean_cd += cd / static_cast<double>(seen.size());
  horizon.least_cd = *std::min_element(seen.begin(), seen.end());
  const auto dark =
      std::count_if(seen.begin(), seen.end(), [&](double cd) { return cd < kDarkShare * horizon.mean_cd; });
  horizon.dark_deg = horizon.lit_deg * static_cast<double>(dark) / static_cast<double>(seen.size());
  return horizon;
}

}  // namespace prismwright
