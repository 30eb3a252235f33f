#pragma once

#include <vector>

namespace prismwright {

/// Intensity over time: straight between its points. Times rise strictly; before the first and after the last
/// point there is no light.
struct FlashCurve {
  std::vector<double> s;
  std::vector<double> cd;
};

/// Time for which the eye sums light by night, s (33 CFR 66.01-5; the usual value).
inline constexpr double kEyeSums_s = 0.2;

/// The steady intensity that would be seen as far as the flash, by four published methods.
struct EffectiveIntensities {
  double peak_cd = 0;
  double integral_cd_s = 0;   ///< J
  double blondel_rey_cd = 0;  ///< greatest of (integral from t1 to t2) / (a + t2 - t1)
  double form_factor_cd = 0;  ///< J / (a + J / peak), Schmidt-Clausen
  double allard_cd = 0;       ///< greatest i of di/dt = (I - i) / a
  double modified_allard_cd =
      0;  ///< greatest of I convolved with a / (a + t)^2, Ohno and Couzin 2002, CIE 229:2018
};

/// Exact for the straight pieces of the curve but for the search of the modified Allard maximum (1e-6 of it).
/// All zero for a curve of fewer than two points or without light.
EffectiveIntensities effective_intensities(const FlashCurve& curve, double a_s = kEyeSums_s);

}  // namespace prismwright
