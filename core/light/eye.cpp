#include "core/light/eye.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/light/cie_observer.h"

namespace prismwright {

namespace {

constexpr double kRow_nm = 5;

/// Lagrange's weights of four values at 0, 1, 2, 3 for a place t among them.
std::array<double, 4> cubic_weights(double t) {
  return {-(t - 1) * (t - 2) * (t - 3) / 6, t * (t - 2) * (t - 3) / 2, -t * (t - 1) * (t - 3) / 2,
          t * (t - 1) * (t - 2) / 6};
}

}  // namespace

Xyz eye_at(double nm) {
  if (!(nm >= kEyeFrom_nm && nm <= kEyeTo_nm)) return {};
  const auto rows = observer_table();
  const double place = (nm - kEyeFrom_nm) / kRow_nm;
  const double first = std::clamp(std::floor(place) - 1, 0.0, static_cast<double>(rows.size() - 4));
  const auto weights = cubic_weights(place - first);
  Xyz sum;
  for (std::size_t i = 0; i < weights.size(); ++i) {
    const ObserverRow& row = rows[static_cast<std::size_t>(first) + i];
    sum += weights[i] * Xyz{row.x, row.y, row.z};
  }
  // Where a curve falls to nothing, the cubic swings under it by less than 1e-6.
  return {std::max(sum.x, 0.0), std::max(sum.y, 0.0), std::max(sum.z, 0.0)};
}

}  // namespace prismwright
