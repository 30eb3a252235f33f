#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "core/light/chromaticity.h"
#include "core/light/cie_observer.h"
#include "core/light/colour_loci.h"
#include "core/light/signal_regions.h"

namespace prismwright {
namespace {

LightWay behind(Screen screen) {
  LightWay way;
  way.screen = screen_of(screen, {}).value();
  return way;
}

double determinant(const Chromaticity& a, const Chromaticity& b) { return a.x * b.y - a.y * b.x; }

double area_of(const std::vector<Chromaticity>& corners) {
  double twice = 0;
  for (std::size_t i = 0; i < corners.size(); ++i)
    twice += determinant(corners[i], corners[(i + 1) % corners.size()]);
  return std::abs(twice) / 2;
}

TEST(Eye, MeetsItsTableAndSeesNothingBeyond) {
  for (const ObserverRow& row : observer_table()) {
    EXPECT_NEAR(eye_at(row.nm).x, row.x, 1e-14);
    EXPECT_NEAR(eye_at(row.nm).y, row.y, 1e-14);
    EXPECT_NEAR(eye_at(row.nm).z, row.z, 1e-14);
  }
  EXPECT_EQ(eye_at(379.9).sum(), 0);
  EXPECT_EQ(eye_at(780.1).sum(), 0);
}

TEST(Eye, IsNowhereNegativeAndHasNoJumps) {
  Xyz last = eye_at(380);
  for (double nm = 380; nm <= 780; nm += 0.05) {
    const Xyz here = eye_at(nm);
    EXPECT_GE(std::min({here.x, here.y, here.z}), 0);
    EXPECT_LT(std::abs(here.x - last.x) + std::abs(here.y - last.y) + std::abs(here.z - last.z), 0.006) << nm;
    last = here;
  }
}

TEST(Colour, OfALineStandsOnTheSpectralLocus) {
  const auto locus = spectral_locus();
  ASSERT_EQ(locus.size(), 81u);
  for (const LocusPoint& point : locus) {
    const LightColour line = colour_of(LampSpectrum::line(point.value).value());
    EXPECT_NEAR(line.at.x, point.at.x, 1e-12);
    EXPECT_NEAR(line.at.y, point.at.y, 1e-12);
  }
}

TEST(Colour, OfTwoLightsTogetherStandsOnTheLineBetweenThem) {
  const auto blue = LampSpectrum::line(470).value();
  const auto yellow = LampSpectrum::line(575).value();
  const LightColour both = colour_of(LampSpectrum::slices({{470, 3}, {575, 1}}));
  const auto [a, b] = std::pair(colour_of(blue).at, colour_of(yellow).at);
  EXPECT_NEAR((both.at.x - a.x) * (b.y - a.y) - (both.at.y - a.y) * (b.x - a.x), 0, 1e-12);
}

TEST(Colour, BehindEverythingIsTheProductOfAllShares) {
  LightWay way;
  way.tint = Tint::of(Spectrum::flat(0.9), 10).value();
  way.path_mm = 20;
  way.screen = ColourScreen(Spectrum::flat(0.5));
  way.further = Spectrum::flat(0.8);
  const LampSpectrum lamp = LampSpectrum::illuminant_a();
  const LightColour left = colour_behind(lamp, way);
  EXPECT_NEAR(left.factor, 0.81 * 0.5 * 0.8, 1e-12);
  EXPECT_NEAR(left.at.x, colour_of(lamp).at.x, 1e-12);
  EXPECT_NEAR(screen_factor(lamp, way), 0.5, 1e-12);
}

TEST(Colour, OfADarkLightIsNone) {
  LightWay way;
  way.screen = ColourScreen(Spectrum::flat(0));
  const LightColour none = colour_behind(LampSpectrum::white_led(), way);
  EXPECT_EQ(none.factor, 0);
  EXPECT_EQ(none.at.x, 0);
  way.further = Spectrum::flat(0);
  EXPECT_EQ(screen_factor(LampSpectrum::white_led(), way), 0);
}

TEST(Colour, OfTintedAcrylicDeepensWithThePath) {
  LightWay way;
  way.tint =
      Tint::of(Spectrum::from_text("400:0.7, 500:0.95, 600:0.99", SpectrumKind::transmittance, "x").value(), 10)
          .value();
  LightColour last = colour_behind(LampSpectrum::illuminant_a(), way);
  for (way.path_mm = 20; way.path_mm <= 100; way.path_mm += 20) {
    const LightColour here = colour_behind(LampSpectrum::illuminant_a(), way);
    EXPECT_GT(here.at.x, last.at.x);
    EXPECT_LT(here.factor, last.factor);
    last = here;
  }
}

TEST(GenericScreens, GiveTheirSignalColourFromFlameToLed) {
  const LampSpectrum lamps[] = {LampSpectrum::black_body(2000).value(), LampSpectrum::illuminant_a(),
                                LampSpectrum::black_body(3200).value(), LampSpectrum::white_led()};
  for (const LampSpectrum& lamp : lamps) {
    for (const SignalRegion& region : signal_regions()) {
      const Screen screen = region.colour == "red"     ? Screen::red
                            : region.colour == "green" ? Screen::green
                                                       : Screen::yellow;
      if (region.colour == "white") continue;
      const Chromaticity at = colour_behind(lamp, behind(screen)).at;
      EXPECT_TRUE(holds(region, at)) << region.colour << " " << region.rule << " " << at.x << " " << at.y;
    }
  }
}

TEST(GenericScreens, OfRedLetMoreThroughFromAFlameThanFromALed) {
  const double flame = screen_factor(LampSpectrum::black_body(2000).value(), behind(Screen::red));
  const double led = screen_factor(LampSpectrum::white_led(), behind(Screen::red));
  EXPECT_GT(flame, 1.5 * led);
}

TEST(WhiteLed, IsWhiteByTheRule) {
  EXPECT_TRUE(holds(signal_regions()[0], colour_of(LampSpectrum::white_led()).at));
}

TEST(SignalRegions, DoNotCrossThemselves) {
  for (const SignalRegion& region : signal_regions()) {
    EXPECT_FALSE(crosses_itself(region.corners)) << region.colour << " " << region.rule;
    EXPECT_GT(area_of(region.corners), 1e-4);
    if (region.corners.size() > 4) continue;
    // Two corners of a four-sided outline out of turn make it cross.
    auto swapped = region.corners;
    std::swap(swapped[1], swapped[2]);
    EXPECT_TRUE(crosses_itself(swapped)) << region.colour;
  }
}

TEST(SignalRegions, HoldTheirCentreAndTheirCornersButNothingFarOff) {
  for (const SignalRegion& region : signal_regions()) {
    Chromaticity centre;
    const double share = 1.0 / static_cast<double>(region.corners.size());
    for (const Chromaticity& corner : region.corners) {
      centre.x += share * corner.x;
      centre.y += share * corner.y;
      EXPECT_NEAR(region_margin(region, corner), 0, 1e-12);
      EXPECT_TRUE(holds(region, corner));
    }
    EXPECT_GT(region_margin(region, centre), 0.001) << region.colour;
    EXPECT_FALSE(holds(region, {0.1, 0.1}));
    EXPECT_FALSE(holds(region, {0, 0}));
  }
}

TEST(SignalRegions, MeasureTheDistanceToTheNearestSide) {
  const SignalRegion square{"white", "a square", {{0.2, 0.2}, {0.4, 0.2}, {0.4, 0.4}, {0.2, 0.4}}};
  EXPECT_NEAR(region_margin(square, {0.25, 0.3}), 0.05, 1e-15);
  EXPECT_NEAR(region_margin(square, {0.1, 0.3}), -0.1, 1e-15);
  EXPECT_NEAR(region_margin(square, {0.43, 0.44}), -0.05, 1e-15);
  EXPECT_TRUE(holds(square, {0.4004, 0.3}));
  EXPECT_FALSE(holds(square, {0.4006, 0.3}));
}

TEST(BlackBodyLocus, RunsFromRedToBlueInsideTheSpectralLocus) {
  const auto points = black_body_locus(1000, 25000, 40);
  ASSERT_EQ(points.size(), 40u);
  EXPECT_NEAR(points.front().value, 1000, 1e-9);
  EXPECT_NEAR(points.back().value, 25000, 1e-6);
  SignalRegion diagram{"all colours", "the table", {}};
  for (const LocusPoint& point : spectral_locus())
    if (point.value >= 400 && point.value <= 690) diagram.corners.push_back(point.at);
  double last = 1;
  for (const LocusPoint& point : points) {
    EXPECT_GT(region_margin(diagram, point.at), 0) << point.value;
    EXPECT_LT(point.at.x, last);
    last = point.at.x;
  }
}

}  // namespace
}  // namespace prismwright
