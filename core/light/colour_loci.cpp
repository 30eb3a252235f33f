#include "core/light/colour_loci.h"

#include <algorithm>

#include "core/light/cie_observer.h"
#include "core/light/lamp_spectrum.h"

namespace prismwright {

std::vector<LocusPoint> spectral_locus() {
  std::vector<LocusPoint> points;
  for (const ObserverRow& row : observer_table())
    points.push_back({row.nm, Xyz{row.x, row.y, row.z}.chromaticity()});
  return points;
}

std::vector<LocusPoint> black_body_locus(double from_k, double to_k, int count) {
  count = std::max(count, 2);
  const double first = 1 / std::clamp(from_k, kLeastBlackBody_k, kGreatestBlackBody_k);
  const double last = 1 / std::clamp(to_k, kLeastBlackBody_k, kGreatestBlackBody_k);
  std::vector<LocusPoint> points;
  for (int i = 0; i < count; ++i) {
    const double inverse = first + (last - first) * i / (count - 1);
    const double kelvin = std::clamp(1 / inverse, kLeastBlackBody_k, kGreatestBlackBody_k);
    points.push_back({kelvin, LampSpectrum::black_body(kelvin)->xyz().chromaticity()});
  }
  return points;
}

}  // namespace prismwright
