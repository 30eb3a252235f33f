#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "core/light/effective_intensity.h"
#include "core/light/range.h"

namespace prismwright {
namespace {

FlashCurve sampled(double half_s, int points, double (*shape)(double)) {
  FlashCurve curve;
  for (int i = 0; i <= points; ++i) {
    const double t = half_s * (2.0 * i / points - 1);
    curve.s.push_back(t);
    curve.cd.push_back(shape(t));
  }
  return curve;
}

// Derived from the methods' published definitions (33 CFR 66; Schmidt-Clausen; Allard; Ohno and Couzin 2002),
// with a = 0.2 s and a peak of 1; the last digit printed is the tolerance's reason.
void expect_effective(const FlashCurve& curve, double br, double ff, double al, double ma) {
  const EffectiveIntensities e = effective_intensities(curve);
  EXPECT_NEAR(e.blondel_rey_cd, br, 1e-4);
  EXPECT_NEAR(e.form_factor_cd, ff, 1e-4);
  EXPECT_NEAR(e.allard_cd, al, 1e-4);
  EXPECT_NEAR(e.modified_allard_cd, ma, 1e-4);
}

TEST(EffectiveIntensity, OfRectangles) {
  expect_effective({{0, 0.2}, {1, 1}}, 0.5, 0.5, 0.632121, 0.5);
  expect_effective({{0, 0.5}, {1, 1}}, 0.714286, 0.714286, 0.917915, 0.714286);
}

TEST(EffectiveIntensity, OfATriangle) {
  expect_effective({{0, 0.1, 0.2}, {0, 1, 0}}, 0.267949, 0.333333, 0.336407, 0.274214);
}

TEST(EffectiveIntensity, OfBellCurves) {
  // Full width at half 0.1 s and 0.3 s.
  static double full;
  const auto shape = +[](double t) { return std::exp(-4 * std::numbers::ln2 * t * t / full / full); };
  full = 0.1;
  expect_effective(sampled(0.4, 1600, shape), 0.282179, 0.347358, 0.356942, 0.293170);
  full = 0.3;
  expect_effective(sampled(1.2, 1600, shape), 0.486097, 0.614896, 0.665571, 0.513416);
}

TEST(EffectiveIntensity, TendsToFiveTimesTheIntegralForVeryShortFlashes) {
  const EffectiveIntensities e = effective_intensities({{0, 1e-5, 2e-5}, {0, 1e6, 0}});
  for (const double cd : {e.blondel_rey_cd, e.form_factor_cd, e.allard_cd, e.modified_allard_cd})
    EXPECT_NEAR(cd / (5 * e.integral_cd_s), 1, 3e-4);
}

TEST(EffectiveIntensity, OfTwoFlashesIsThatOfTheStretchThatSuitsBest) {
  // A pause of 2 s costs more than the second flash brings.
  const EffectiveIntensities one = effective_intensities({{0, 0.3}, {8, 8}});
  const EffectiveIntensities two =
      effective_intensities({{0, 0.3, 0.30001, 2.3, 2.30001, 2.6}, {8, 8, 0, 0, 7, 7}});
  EXPECT_NEAR(two.blondel_rey_cd, one.blondel_rey_cd, 1e-3);
}

TEST(EffectiveIntensity, OfNoLightIsNone) {
  EXPECT_EQ(effective_intensities({{0, 1}, {0, 0}}).blondel_rey_cd, 0);
  EXPECT_EQ(effective_intensities({}).peak_cd, 0);
}

// Derived: I = 3.43e6 E d^2 0.05^(-d/V), E = 2e-7 lx, V = 10; 1852^2 = 3.429904e6 for 3.43e6 explains 3e-5.
TEST(LuminousRange, MeetsAllardsLaw) {
  EXPECT_NEAR(intensity_for_range_cd(1) / 0.925582, 1, 5e-5);
  EXPECT_NEAR(intensity_for_range_cd(5) / 76.6950, 1, 5e-5);
  EXPECT_NEAR(intensity_for_range_cd(10) / 1371.96, 1, 5e-5);
  EXPECT_NEAR(intensity_for_range_cd(20) / 109757, 1, 5e-5);
  EXPECT_NEAR(luminous_range_nmi(100), 5.387, 1e-3);
  EXPECT_NEAR(luminous_range_nmi(10000), 14.261, 1e-3);
}

// Published, 33 CFR 84.14: 0.9, 4.3, 12, 27, 52, 94 cd for 1 to 6 nautical miles at a visibility K of 0.8 (V =
// ln 0.05 / ln 0.8 = 13.43): printed to two digits.
TEST(LuminousRange, MeetsTheTableOfTheRulesOfTheRoad) {
  const double visibility = std::log(0.05) / std::log(0.8);
  const double printed[] = {0.9, 4.3, 12, 27, 52, 94};
  for (int d = 1; d <= 6; ++d) {
    const double cd = intensity_for_range_cd(d, visibility);
    EXPECT_NEAR(cd, printed[d - 1], d < 3 ? 0.05 : 0.5) << d;
  }
}

// Published, 33 CFR 66.01-11: 3, 10 and 54 cd for 2, 3 and 5 miles = ceil(I(d - 0.5)) (derived).
TEST(LuminousRange, MeetsTheTableOfPrivateAids) {
  EXPECT_EQ(std::ceil(intensity_for_range_cd(1.5)), 3);
  EXPECT_EQ(std::ceil(intensity_for_range_cd(2.5)), 10);
  EXPECT_EQ(std::ceil(intensity_for_range_cd(4.5)), 54);
}

TEST(LuminousRange, AndIntensityAreEachOthersInverse) {
  for (const double visibility : {0.05, 1.0, 10.0, 60.0})
    for (const double cd : {1e-3, 1.0, 1e4, 1e8})
      EXPECT_NEAR(intensity_for_range_cd(luminous_range_nmi(cd, visibility), visibility) / cd, 1, 1e-9);
  EXPECT_EQ(luminous_range_nmi(0), 0);
}

// Published, Encyclopaedia Britannica 1911, Table III: nautical miles for a height in feet and the eye at the
// water.
TEST(GeographicRange, MeetsThePublishedTable) {
  const double feet[] = {5, 15, 50, 100, 200, 500};
  const double printed[] = {2.565, 4.443, 8.112, 11.47, 16.22, 25.65};
  for (int i = 0; i < 6; ++i) EXPECT_NEAR(geographic_range_nmi(0.3048 * feet[i], 0), printed[i], 0.006);
}

// Published rule, EB11 p. 639; a first-order lens of 57 deg by 45 deg gathered into 3.4 deg square (derived
// from a flame of 110 mm at 920 mm: order of magnitude alone).
TEST(HistoricIntensity, IsTheLampTimesTheGainOfBothWays) {
  EXPECT_NEAR(historic_intensity_cd(1000, 0.8, 57, 45, 5, 5), 1000 * 0.8 * 57 * 45 / 25.0, 1e-9);
}

}  // namespace
}  // namespace prismwright
