#include "core/light/light_report.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/lens/quantities.h"
#include "tests/support/planned_lens.h"

namespace prismwright {
namespace {

LensValues small_lens() {
  LensValues values = starting_values("6", Work::bullseye, 6);
  values.light.turn_s = 30;
  return values;
}

LightAsk quick() {
  LightAsk ask;
  ask.grid = {-2, 0.5, 9, -2, 0.5, 9};
  ask.wanted_error = 0.01;
  ask.rays = 3000;
  ask.lines = 2;
  return ask;
}

LightReport report_of(const LensValues& values) { return *light_report(plan_of(values), quick()); }

// A single line knows one absorption only: a tint by points and the same loss as a plain number must agree.
TEST(LightThroughTint, OfASingleLineIsThatOfTheSameAbsorption) {
  LensValues tinted = small_lens();
  tinted.lamp.light = LampLight::line;
  tinted.lamp.line_nm = 589.3;
  LensValues plain = tinted;
  tinted.material.tint = "400:0.2, 589.3:0.5, 700:0.9";
  tinted.material.tint_mm = 10;
  plain.material.absorption_per_m = std::log(2.0) / 0.010;
  const LightReport one = report_of(tinted);
  const LightReport other = report_of(plain);
  EXPECT_EQ(one.colours.lines_nm.size(), 1u);
  EXPECT_NEAR(one.beam.peak_cd / other.beam.peak_cd, 1, 1e-9);
  EXPECT_NEAR(one.budget.of(LightFate::absorbed), other.budget.of(LightFate::absorbed),
              1e-6 * one.budget.flux_lm);
  EXPECT_NEAR(one.colours.tint_factor, std::pow(0.5, one.colours.glass_mm / 10), 1e-9);
}

TEST(LightThroughTint, BudgetStillAddsUpAndGreenTintTurnsTheLightGreen) {
  LensValues values = small_lens();
  const LightReport clear = report_of(values);
  values.material.tint = "400:0.5, 480:0.8, 520:0.95, 560:0.9, 600:0.6, 700:0.4";
  const LightReport green = report_of(values);
  double sum = 0;
  for (const double lm : green.budget.lm) sum += lm;
  EXPECT_NEAR(sum / green.flux_lm, 1, 1e-9);
  EXPECT_LT(green.colours.of(Screen::none).at.x, clear.colours.of(Screen::none).at.x - 0.02);
  EXPECT_GT(green.colours.of(Screen::none).at.y, clear.colours.of(Screen::none).at.y + 0.02);
  // What the tint leaves of the beam is what its spectrum says of the mean path, within what paths differ.
  EXPECT_NEAR(green.beam.peak_cd / clear.beam.peak_cd, green.colours.tint_factor, 0.03);
}

// The glass alone hardly changes the colour: the beam stands where the lamp does.
TEST(LightColours, OfAClearLensAreTheLamps) {
  const LightReport report = report_of(small_lens());
  const Chromaticity a{0.44757, 0.40745};  // CIE 15, illuminant A
  EXPECT_NEAR(report.colours.lamp.x, a.x, 1e-4);
  EXPECT_NEAR(report.colours.lamp.y, a.y, 1e-4);
  EXPECT_NEAR(report.colours.of(Screen::none).at.x, a.x, 0.005);
  EXPECT_NEAR(report.colours.of(Screen::none).at.y, a.y, 0.005);
  EXPECT_TRUE(report.colours.of(Screen::none).as_ruled());
  EXPECT_EQ(report.colours.of(Screen::none).factor, 1);
}

TEST(LightColours, ScreenTakesItsShareOfBeamRhythmAndRange) {
  LensValues values = small_lens();
  const LightReport white = report_of(values);
  for (Panel& panel : values.panels) panel.screen = Screen::red;
  values.light.red_screen = "600:0.3, 601:0.3";  // the same at every wavelength
  const LightReport dimmed = report_of(values);
  EXPECT_NEAR(dimmed.colours.of(Screen::red).factor, 0.3, 1e-9);
  EXPECT_NEAR(dimmed.beam.peak_cd / white.beam.peak_cd, 0.3, 1e-6);
  EXPECT_NEAR(dimmed.rhythm.peak_cd / white.rhythm.peak_cd, 0.3, 1e-6);
  EXPECT_EQ(dimmed.character, "Fl.R 5s");
  // Ranges are of the light without its screen, and behind each.
  EXPECT_NEAR(dimmed.ranges.front().white_nmi, white.ranges.front().white_nmi, 1e-6);
  EXPECT_LT(dimmed.ranges.front().red_nmi, dimmed.ranges.front().white_nmi);
  // A grey sheet called red is not red.
  EXPECT_FALSE(dimmed.colours.of(Screen::red).as_ruled());
  bool told = false;
  for (const std::string& warning : dimmed.warnings)
    told = told || warning.find("The red light stands at") == 0;
  EXPECT_TRUE(told);
}

// Curves that are known by themselves: two panels of 180 deg, the second dark but for its middle third.
TEST(Horizon, TellsHowMuchOfItIsDark) {
  PanelCurve bright{0, Screen::none, -90, 1, std::vector<double>(181, 300)};
  PanelCurve narrow{180, Screen::none, -30, 1, std::vector<double>(61, 300)};
  const std::vector<PanelPlace> places = {{1, 0, -90, 90}, {2, 180, 90, 270}};
  const Horizon horizon = horizon_of({bright, narrow}, places);
  EXPECT_NEAR(horizon.lit_deg, 360, 1e-9);
  EXPECT_NEAR(horizon.dark_deg, 120, 1);
  EXPECT_NEAR(horizon.mean_cd, 200, 1);
  EXPECT_EQ(horizon.least_cd, 0);
  EXPECT_NEAR(horizon_of({bright, {}}, places).lit_deg, 180, 1e-9);
}

TEST(LightReport, RefusesASpectrumThatIsNotThereWithItsKey) {
  LensValues values = small_lens();
  values.lamp.light = LampLight::points;
  const auto refused = light_report(plan_of(values), quick());
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.problem().where, "lamp.spectrum");
}

}  // namespace
}  // namespace prismwright
