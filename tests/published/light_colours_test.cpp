#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "core/light/chromaticity.h"
#include "core/light/cie_observer.h"
#include "core/light/signal_regions.h"

namespace prismwright {
namespace {

/// The CIE's own way: a sum over the table's rows, every 5 nm.
template <class Power>
Chromaticity summed_at_5_nm(const Power& power) {
  std::vector<SpectralSlice> slices;
  for (const ObserverRow& row : observer_table()) slices.push_back({row.nm, power(row.nm)});
  return LampSpectrum::slices(std::move(slices)).xyz().chromaticity();
}

double equal_power(double /*nm*/) { return 1; }

/// CIE illuminant A as published (CIE 15).
double illuminant_a(double nm) {
  return std::pow(560 / nm, 5) * std::expm1(1.435e7 / (2848 * 560)) / std::expm1(1.435e7 / (2848 * nm));
}

/// Components of daylight at 380, 390 .. 780 nm (CIE 15, table T.2; the values as in yorick-data, file cie.i).
constexpr std::array<double, 41> kS0 = {
    63.4,  65.8,  94.8,  104.8, 105.9, 96.8, 113.9, 125.6, 125.5, 121.3, 121.3, 113.5, 113.1, 110.8,
    106.5, 108.8, 105.3, 104.4, 100,   96,   95.1,  89.1,  90.5,  90.3,  88.4,  84,    85.1,  81.9,
    82.6,  84.9,  81.3,  71.9,  74.3,  76.4, 63.3,  71.7,  77,    65.2,  47.7,  68.6,  65};
constexpr std::array<double, 41> kS1 = {
    38.5, 35,  43.4,  46.3, 43.9,  37.1,  36.7,  35.9,  32.6,  27.9,  24.3, 20.1,  16.2,  13.2,
    8.6,  6.1, 4.2,   1.9,  0,     -1.6,  -3.5,  -3.5,  -5.8,  -7.2,  -8.6, -9.5,  -10.9, -10.7,
    -12,  -14, -13.6, -12,  -13.3, -12.9, -10.6, -11.6, -12.2, -10.2, -7.8, -11.2, -10.4};
constexpr std::array<double, 41> kS2 = {3,    1.2,  -1.1, -0.5, -0.7, -1.2, -2.6, -2.9, -2.8, -2.6, -2.6,
                                        -1.8, -1.5, -1.3, -1.2, -1,   -0.5, -0.3, 0,    0.2,  0.5,  2.1,
                                        3.2,  4.1,  4.7,  5.1,  6.7,  7.3,  8.6,  9.8,  10.2, 8.3,  9.6,
                                        8.5,  7,    7.6,  8,    6.7,  5.2,  7.4,  6.8};

/// Daylight of 6504 K, which is D65: CIE 15, with the components straight between their rows.
double d65(double nm) {
  const double t = 1000.0 / 6504;
  const double x = 0.244063 + t * (0.09911 + t * (2.9678 - t * 4.6070));
  const double y = -0.275 + x * (2.870 - 3.000 * x);
  const double m = 0.0241 + 0.2562 * x - 0.7341 * y;
  const double m1 = (-1.3515 - 1.7703 * x + 5.9114 * y) / m;
  const double m2 = (0.0300 - 31.4424 * x + 30.0717 * y) / m;
  const auto at = [&](std::size_t row) { return kS0[row] + m1 * kS1[row] + m2 * kS2[row]; };
  const double place = (nm - 380) / 10;
  const auto row = std::min<std::size_t>(static_cast<std::size_t>(place), 39);
  const double share = place - static_cast<double>(row);
  return (1 - share) * at(row) + share * at(row + 1);
}

void expect_at(const Chromaticity& at, double x, double y, double within) {
  EXPECT_NEAR(at.x, x, within);
  EXPECT_NEAR(at.y, y, within);
}

TEST(Cie1931, TableSumsAsPublished) {
  double sum = 0;
  for (const ObserverRow& row : observer_table()) sum += row.y;
  EXPECT_NEAR(sum, 21.371327, 5e-7);
}

TEST(Cie1931, IlluminantsStandWherePublished) {
  expect_at(summed_at_5_nm(illuminant_a), .447575, .407446, 1e-6);
  expect_at(summed_at_5_nm(d65), .312702, .329013, 1e-6);
  expect_at(summed_at_5_nm(equal_power), 1.0 / 3, 1.0 / 3, 3e-6);
}

TEST(Cie1931, TheProgramsOwnFinerSumAgrees) {
  expect_at(LampSpectrum::illuminant_a().xyz().chromaticity(), .447575, .407446, 3e-6);
}

TEST(BlackBody, OfTheTemperatureOfIlluminantAIsNearlyThat) {
  // 2848 K by the c2 of 1931 are 2855.5 K by that of today.
  expect_at(LampSpectrum::black_body(2848 * 1.438776877 / 1.435).value().xyz().chromaticity(), .447575, .407446,
            3e-6);
}

const SignalRegion& white() { return signal_regions()[0]; }

TEST(SignalWhite, HoldsIlluminantsAD65AndEqualEnergy) {
  for (const auto power : {illuminant_a, d65, equal_power})
    EXPECT_GT(region_margin(white(), summed_at_5_nm(power)), 0.005);
}

TEST(SignalWhite, DoesNotHoldABlackBodyOf2000K) {
  // (.5267, .4133), as tables of black bodies have it.
  const Chromaticity flame = LampSpectrum::black_body(2000)->xyz().chromaticity();
  expect_at(flame, .5267, .4133, 1e-4);
  EXPECT_FALSE(holds(white(), flame));
  EXPECT_LT(region_margin(white(), flame), -0.02);
}

TEST(SignalRegions, AreThePublishedOnes) {
  // Areas by the surveyor's formula from the corners of 33 CFR 66.01-11(5) and COLREG Annex I 7.
  const auto area = [](const SignalRegion& region) {
    double twice = 0;
    const auto& c = region.corners;
    for (std::size_t i = 0, j = c.size() - 1; i < c.size(); j = i++) twice += c[j].x * c[i].y - c[i].x * c[j].y;
    return std::abs(twice) / 2;
  };
  ASSERT_EQ(signal_regions().size(), 5u);
  const double areas[] = {.012543, .0453205, .00146, .000449, .00116};
  for (std::size_t i = 0; i < 5; ++i) EXPECT_NEAR(area(signal_regions()[i]), areas[i], 1e-9) << i;
}

}  // namespace
}  // namespace prismwright
