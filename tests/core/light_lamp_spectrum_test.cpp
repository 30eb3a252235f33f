#include "core/light/lamp_spectrum.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/light/trace_lines.h"

namespace prismwright {
namespace {

using ::testing::HasSubstr;

void expect_unit_flux(const LampSpectrum& light) {
  double flux = 0;
  for (const SpectralSlice& slice : light.slices()) flux += slice.power * eye_at(slice.nm).y;
  EXPECT_NEAR(flux, 1, 1e-12);
  EXPECT_NEAR(light.flux_between(0, 1000), 1, 1e-12);
}

Lamp lamp_of(LampLight light) {
  Lamp lamp;
  lamp.light = light;
  lamp.spectrum = "450:0, 451:1, 452:0, 600:0, 600.4:2, 600.5:0";
  return lamp;
}

TEST(LampSpectrum, OfEveryKindHasALuminousFluxOfOne) {
  for (const LampLight light : {LampLight::black_body, LampLight::illuminant_a, LampLight::white_led,
                                LampLight::line, LampLight::points}) {
    const auto made = spectrum_of(lamp_of(light));
    ASSERT_TRUE(made.ok());
    expect_unit_flux(*made);
  }
}

TEST(LampSpectrum, OfABlackBodyPeaksWhereWiensLawSays) {
  // Wien's displacement law, 2.897771955e6 nm K (CODATA 2018).
  for (const double kelvin : {4500.0, 5000.0, 6000.0}) {
    const auto slices = LampSpectrum::black_body(kelvin)->slices();
    const auto peak = std::max_element(slices.begin(), slices.end(),
                                       [](const auto& a, const auto& b) { return a.power < b.power; });
    EXPECT_NEAR(peak->nm, 2.897771955e6 / kelvin, 0.5);
  }
}

TEST(LampSpectrum, OfAHotterBodyIsBluer) {
  double last = 1;
  for (const double kelvin : {1500.0, 2000.0, 3000.0, 6000.0, 12000.0}) {
    const double red = LampSpectrum::black_body(kelvin)->flux_between(600, 800);
    EXPECT_LT(red, last);
    last = red;
  }
}

TEST(LampSpectrum, OfPointsKeepsThePowerOfSpikesNarrowerThanASlice) {
  // Triangles of area 1 and 0.5 nm: their luminous flux by the eye at their middles, within what the eye
  // changes over them (0.2 %).
  const LampSpectrum light = spectrum_of(lamp_of(LampLight::points)).value();
  const double blue = 1 * eye_at(451).y;
  const double red = 0.5 * eye_at(600.3).y;
  EXPECT_NEAR(light.flux_between(400, 500), blue / (blue + red), 0.002 * blue / (blue + red));
}

TEST(LampSpectrum, ScreenedLetsThroughItsShare) {
  const LampSpectrum light = LampSpectrum::illuminant_a();
  EXPECT_NEAR(light.through([](double) { return 0.3; }).flux(), 0.3, 1e-12);
  const LampSpectrum cut = light.through([](double nm) { return nm < 600 ? 0.0 : 1.0; });
  EXPECT_NEAR(cut.flux(), light.flux_between(600, 800), 1e-12);
}

TEST(LampSpectrum, RefusesWhatCannotShine) {
  Lamp lamp = lamp_of(LampLight::black_body);
  lamp.temperature_k = 300;
  EXPECT_THAT(spectrum_of(lamp).problem().text, HasSubstr("300 K is outside 800 to 25000 K"));
  EXPECT_EQ(spectrum_of(lamp).problem().where, "lamp.temperature_k");
  lamp = lamp_of(LampLight::line);
  lamp.line_nm = 905;
  EXPECT_THAT(spectrum_of(lamp).problem().text, HasSubstr("905 nm is outside 380 to 780 nm"));
  lamp = lamp_of(LampLight::points);
  lamp.spectrum.clear();
  EXPECT_EQ(spectrum_of(lamp).problem().where, "lamp.spectrum");
}

TEST(TraceLines, KeepFluxColourAndMeanWavelengthOfTheWholeLight) {
  const LampSpectrum light = LampSpectrum::white_led();
  double mean = 0;
  for (const SpectralSlice& slice : light.slices()) mean += slice.nm * slice.power * eye_at(slice.nm).y;
  for (int count = 1; count <= 12; ++count) {
    const auto lines = trace_lines(light, count);
    ASSERT_EQ(std::ssize(lines), count);
    Xyz sum;
    double of_lines = 0;
    double last = 0;
    for (const TraceLine& line : lines) {
      EXPECT_NEAR(line.flux, 1.0 / count, 1e-12);
      EXPECT_NEAR(line.xyz.y, line.flux, 1e-12);
      EXPECT_GT(line.nm, last);
      sum += line.xyz;
      of_lines += line.nm * line.flux;
      last = line.nm;
    }
    EXPECT_NEAR(sum.x, light.xyz().x, 1e-12);
    EXPECT_NEAR(sum.z, light.xyz().z, 1e-12);
    EXPECT_NEAR(of_lines, mean, 1e-9);
  }
}

TEST(TraceLines, StandForASmoothFunctionOfWavelengthTheBetterTheMoreTheyAre) {
  // Oracle: the sum over every slice. The function is a dispersion formula's 1 / L^2 term.
  const auto smooth = [](double nm) { return 1e6 / (nm * nm); };
  const LampSpectrum light = LampSpectrum::illuminant_a();
  double whole = 0;
  for (const SpectralSlice& slice : light.slices())
    whole += smooth(slice.nm) * slice.power * eye_at(slice.nm).y;
  const auto error = [&](int count) {
    double sum = 0;
    for (const TraceLine& line : trace_lines(light, count)) sum += line.flux * smooth(line.nm);
    return std::abs(sum / whole - 1);
  };
  EXPECT_LT(error(1), 0.016);
  EXPECT_LT(error(3), 0.0033);
  EXPECT_LT(error(5), 0.0017);
  EXPECT_LT(error(12), 0.0006);
}

TEST(TraceLines, OfALineAreOneAndOfNoLightNone) {
  const auto lines = trace_lines(LampSpectrum::line(589.3).value(), 12);
  ASSERT_EQ(lines.size(), 1u);
  EXPECT_DOUBLE_EQ(lines[0].nm, 589.3);
  EXPECT_NEAR(lines[0].flux, 1, 1e-12);
  EXPECT_TRUE(trace_lines(LampSpectrum::white_led().through([](double) { return 0.0; }), 5).empty());
}

TEST(TraceLines, AreOneToTwelve) {
  EXPECT_EQ(trace_lines(LampSpectrum::white_led(), 0).size(), 1u);
  EXPECT_EQ(trace_lines(LampSpectrum::white_led(), 99).size(), 12u);
}

}  // namespace
}  // namespace prismwright
