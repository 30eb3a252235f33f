#include "core/light/tint.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "core/light/colour_screen.h"

namespace prismwright {
namespace {

using ::testing::HasSubstr;

Material tinted(const char* points, double thickness_mm, double absorption_per_m = 0) {
  Material material;
  material.tint = points;
  material.tint_mm = thickness_mm;
  material.absorption_per_m = absorption_per_m;
  return material;
}

TEST(Tint, LosesByBeerAndLambertsLaw) {
  const Tint tint = tint_of(tinted("400:0.25, 600:0.81", 10)).value();
  EXPECT_DOUBLE_EQ(tint.at(400, 10), 0.25);
  EXPECT_DOUBLE_EQ(tint.at(400, 20), 0.0625);
  EXPECT_DOUBLE_EQ(tint.at(400, 5), 0.5);
  EXPECT_DOUBLE_EQ(tint.at(600, 5), 0.9);
  EXPECT_DOUBLE_EQ(tint.at(400, 0), 1);
  EXPECT_NEAR(std::exp(-tint.absorption_per_mm(450) * 37), tint.at(450, 37), 1e-15);
}

TEST(Tint, AddsTheFlatAbsorptionOfTheMaterial) {
  const Tint both = tint_of(tinted("500:0.5", 10, 2)).value();
  EXPECT_NEAR(both.at(500, 30), 0.125 * std::exp(-0.06), 1e-15);
  const Tint flat = tint_of(tinted("", 10, 2)).value();
  EXPECT_NEAR(flat.at(500, 30), std::exp(-0.06), 1e-15);
  EXPECT_NEAR(flat.absorption_per_mm(500), 0.002, 1e-15);
  EXPECT_DOUBLE_EQ(Tint().at(500, 1000), 1);
}

TEST(Tint, ThatLetsNothingThroughStaysANumber) {
  const Tint dark = tint_of(tinted("400:0, 500:1", 10)).value();
  EXPECT_DOUBLE_EQ(dark.at(400, 1), 0);
  EXPECT_DOUBLE_EQ(dark.at(400, 0), 1);
  EXPECT_NEAR(dark.absorption_per_mm(400), 12 * std::log(10) / 10, 1e-12);
}

TEST(Tint, RefusesBadPointsAndThickness) {
  EXPECT_THAT(tint_of(tinted("400:90", 10)).problem().text, HasSubstr("0.8 for 80 %"));
  EXPECT_THAT(tint_of(tinted("400:0.9", 0)).problem().text, HasSubstr("thickness of 0 mm"));
  EXPECT_EQ(tint_of(tinted("400:0.9", 0)).problem().where, "material.tint_mm");
}

TEST(ColourScreen, IsTheGenericOneUntilTheUserGivesPoints) {
  LightSettings settings;
  EXPECT_EQ(screen_of(Screen::red, settings)->sheet().points(), generic_screen(Screen::red).points());
  settings.red_screen = "600:0, 620:0.7";
  EXPECT_NEAR(screen_of(Screen::red, settings)->at(610), 0.35, 1e-15);
  EXPECT_EQ(screen_of(Screen::green, settings)->sheet().points(), generic_screen(Screen::green).points());
  settings.yellow_screen = "600";
  EXPECT_EQ(screen_of(Screen::yellow, settings).problem().where, "light.yellow_screen");
  EXPECT_DOUBLE_EQ(screen_of(Screen::none, settings)->at(555), 1);
}

TEST(ColourScreen, OfAnotherThicknessKeepsItsSurfaces) {
  // Two surfaces of index 1.5 alone let 12/13 through.
  LightSettings settings;
  settings.green_screen = "500:0.6, 501:0.97";
  const ColourScreen screen = screen_of(Screen::green, settings).value();
  EXPECT_NEAR(screen.at(500, kScreen_mm), 0.6, 1e-15);
  EXPECT_NEAR(screen.at(500, 0), 12.0 / 13, 1e-15);
  EXPECT_NEAR(screen.at(500, 2 * kScreen_mm), 0.6 * 0.6 * 13 / 12, 1e-15);
  EXPECT_NEAR(screen.at(501, 100), 0.97, 1e-15);
}

}  // namespace
}  // namespace prismwright
