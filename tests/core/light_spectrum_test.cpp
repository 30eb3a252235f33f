#include "core/lens/spectrum.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <limits>

namespace prismwright {
namespace {

using ::testing::HasSubstr;

Outcome<Spectrum> read(std::string_view text, SpectrumKind kind = SpectrumKind::transmittance) {
  return Spectrum::from_text(text, kind, "material.tint");
}

TEST(Spectrum, ReadsPointsAndWritesThemBackExactly) {
  const auto read_once = read("400:0.10, 500.25:0.8,\n 700:0.1234567890123456; 710:1e-9");
  ASSERT_TRUE(read_once.ok());
  EXPECT_EQ(read_once->text(), "400:0.1, 500.25:0.8, 700:0.1234567890123456, 710:1e-09");
  const auto read_twice = read(read_once->text());
  ASSERT_TRUE(read_twice.ok());
  EXPECT_EQ(read_twice->points(), read_once->points());
}

TEST(Spectrum, IsStraightBetweenPointsAndMeetsThem) {
  const Spectrum points = read("400:0.1, 500:0.8, 520:0.2").value();
  EXPECT_DOUBLE_EQ(points.at(400), 0.1);
  EXPECT_NEAR(points.at(450), 0.45, 1e-15);
  EXPECT_DOUBLE_EQ(points.at(500), 0.8);
  EXPECT_NEAR(points.at(505), 0.65, 1e-15);
  EXPECT_DOUBLE_EQ(points.at(520), 0.2);
}

TEST(Spectrum, OfTransmittanceHoldsItsEndsAndOfEmissionGoesDark) {
  const char* points = "400:0.1, 500:0.8";
  EXPECT_DOUBLE_EQ(read(points)->at(300), 0.1);
  EXPECT_DOUBLE_EQ(read(points)->at(900), 0.8);
  EXPECT_DOUBLE_EQ(read(points, SpectrumKind::emission)->at(399.9), 0);
  EXPECT_DOUBLE_EQ(read(points, SpectrumKind::emission)->at(500), 0.8);
  EXPECT_DOUBLE_EQ(read(points, SpectrumKind::emission)->at(500.1), 0);
}

TEST(Spectrum, OfOnePointIsAFlatTransmittanceButNoEmission) {
  EXPECT_DOUBLE_EQ(read("550:0.4")->at(700), 0.4);
  EXPECT_DOUBLE_EQ(Spectrum::flat(0.25).at(400), 0.25);
  EXPECT_EQ(read("550:0.4", SpectrumKind::emission).problem().code, "spectrum.count");
}

TEST(Spectrum, AnEmissionMayBeGivenInAnyUnit) {
  EXPECT_DOUBLE_EQ(read("400:10, 500:230", SpectrumKind::emission)->at(500), 230);
}

struct Refusal {
  const char* text;
  SpectrumKind kind;
  const char* code;
  const char* says;
};

class SpectrumRefuses : public ::testing::TestWithParam<Refusal> {};

TEST_P(SpectrumRefuses, WithTheValueTheLimitAndTheAdvice) {
  const auto refused = read(GetParam().text, GetParam().kind);
  ASSERT_FALSE(refused.ok());
  EXPECT_EQ(refused.problem().code, GetParam().code);
  EXPECT_EQ(refused.problem().where, "material.tint");
  EXPECT_EQ(refused.problem().trouble, Trouble::request);
  EXPECT_THAT(refused.problem().text, HasSubstr(GetParam().says));
}

constexpr auto kShare = SpectrumKind::transmittance;
constexpr auto kPower = SpectrumKind::emission;
INSTANTIATE_TEST_SUITE_P(
    All, SpectrumRefuses,
    ::testing::Values(Refusal{"", kShare, "spectrum.count", "0 points where at least 1"},
                      Refusal{" , ;\n", kShare, "spectrum.count", "0 points"},
                      Refusal{"400 0.5", kShare, "spectrum.text", "\"400 0.5\" is not a point"},
                      Refusal{"400:0.5x", kShare, "spectrum.text", "\"400:0.5x\""},
                      Refusal{"400:nan", kShare, "spectrum.text", "\"400:nan\""},
                      Refusal{"400:0.5:2", kShare, "spectrum.text", "\"400:0.5:2\""},
                      Refusal{"500:0.5, 400:0.5", kShare, "spectrum.order", "400 nm follows one at 500 nm"},
                      Refusal{"500:0.5, 500:0.6", kShare, "spectrum.order", "one for each wavelength"},
                      Refusal{"0.5:0.5", kShare, "spectrum.wavelength", "outside 200 to 2500 nm"},
                      Refusal{"400:80", kShare, "spectrum.value", "0.8 for 80 %"},
                      Refusal{"400:-0.1", kShare, "spectrum.value", "is -0.1, less than 0"},
                      Refusal{"400:1, 500:-1", kPower, "spectrum.value", "at 500 nm is -1"},
                      Refusal{"800:1, 900:1", kPower, "spectrum.dark", "no light between 380 and 780 nm"},
                      Refusal{"400:0, 700:0", kPower, "spectrum.dark", "no light"}));

TEST(Spectrum, OfNumbersRefusesWhatIsNoNumber) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const auto of = [](double nm, double value) {
    return Spectrum::from_points({{nm, value}}, SpectrumKind::transmittance, "x").ok();
  };
  EXPECT_TRUE(of(500, 0.5));
  EXPECT_FALSE(of(nan, 0.5));
  EXPECT_FALSE(of(500, nan));
  EXPECT_FALSE(of(500, std::numeric_limits<double>::infinity()));
}

}  // namespace
}  // namespace prismwright
