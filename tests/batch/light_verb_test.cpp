#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <fstream>

#include "tests/support/batch_desk.h"

namespace prismwright {
namespace {

using testing::HasSubstr;

class LightVerb : public BatchDesk {};

TEST_F(LightVerb, TellsBeamRhythmRangeAndWhereTheLightGoes) {
  const std::string book = make_book({"--order", "4", "--panels", "8", "--character", "Fl 5s"});
  ASSERT_EQ(ask({"set", book, "lamp.known=luminance", "lamp.luminance_cd_mm2=1", "brief.height_m=30",
                 "light.turn_s=40"})
                .code,
            0);
  const auto json = ask({"light", book, "--json"}).json();
  const double peak = json.at("beam").at("peak_cd").get<double>();
  EXPECT_GT(peak, 5e4);
  EXPECT_LE(peak, json.at("beam").at("bound_cd").get<double>());
  EXPECT_EQ(json.at("character"), "Fl 5s");
  EXPECT_EQ(json.at("differs"), "");
  EXPECT_NEAR(json.at("period_s").get<double>(), 5, 1e-9);
  ASSERT_EQ(json.at("flashes").size(), 1u);
  double sum = 0;
  for (const auto& part : json.at("budget").at("parts")) sum += part.at("share").get<double>();
  EXPECT_NEAR(sum, 1, 1e-9);
  EXPECT_NEAR(json.at("service_cd").get<double>() / json.at("peak_cd").get<double>(), 0.85 * 0.75, 1e-9);
  EXPECT_GT(json.at("nominal_range_nmi").get<double>(), 10);
  // 30 m and an eye at 5 m: 1.147 (sqrt 98.43 + sqrt 16.40).
  EXPECT_NEAR(json.at("geographic_range_nmi").get<double>(),
              1.147 * (std::sqrt(30 / .3048) + std::sqrt(5 / .3048)), 1e-9);
}

TEST_F(LightVerb, SaysWhatIsNotWell) {
  const std::string book = make_book({"--order", "4", "--panels", "8", "--character", "Fl(2) 10s"});
  ASSERT_EQ(ask({"set", book, "light.turn_s=40"}).code, 0);
  const auto answer = ask({"light", book});
  EXPECT_EQ(answer.code, 1);
  EXPECT_THAT(answer.err, HasSubstr("the brief wishes Fl(2) 10s, the lens gives Fl 5s"));
  EXPECT_THAT(answer.out, HasSubstr("Character: Fl 5s"));
  EXPECT_THAT(answer.out, HasSubstr("inside 33 CFR 66.01-11(5)"));
  EXPECT_THAT(answer.out, HasSubstr("keep the lens covered"));
}

TEST_F(LightVerb, ScreensMakeAnAlternatingLight) {
  const std::string book = make_book({"--order", "4", "--panels", "2"});
  ASSERT_EQ(ask({"set", book, "panels.red=2", "light.turn_s=20", "lamp.width_mm=20"}).code, 0);
  EXPECT_EQ(ask({"light", book, "--json"}).json().at("character"), "Al.WR 20s");
}

TEST_F(LightVerb, TellsColoursBehindTintAndScreens) {
  const std::string book = make_book({"--order", "4", "--panels", "2"});
  ASSERT_EQ(ask({"set", book, "panels.green=1", "light.turn_s=60",
                 "light.green_screen=490:0.3, 530:0.3, 560:0.02, 600:0", "material.tint=400:0.5, 700:0.5",
                 "material.tint_mm=20", "lamp.light=black_body", "lamp.temperature_k=2856"})
                .code,
            0);
  const auto answer = ask({"light", book, "--json"});
  const auto colour = answer.json().at("colour");
  // CIE illuminant A is a black body of 2856 K.
  EXPECT_NEAR(colour.at("lamp_x").get<double>(), 0.4476, 2e-4);
  EXPECT_NEAR(colour.at("lamp_y").get<double>(), 0.4074, 2e-4);
  EXPECT_NEAR(colour.at("tint_factor").get<double>(), std::pow(0.5, colour.at("glass_mm").get<double>() / 20),
              1e-9);
  ASSERT_EQ(colour.at("screens").size(), 4u);
  EXPECT_EQ(colour.at("screens")[2].at("colour"), "green");
  EXPECT_TRUE(colour.at("screens")[2].at("regions")[0].at("inside"));
  EXPECT_LT(colour.at("screens")[2].at("factor").get<double>(), 0.3);
}

TEST_F(LightVerb, RefusesSpectraThatCannotBeRead) {
  const std::string book = make_book({"--order", "6", "--panels", "6"});
  const auto refused = ask({"set", book, "light.red_screen=600:x"});
  EXPECT_EQ(refused.code, 2);
  EXPECT_THAT(refused.err, HasSubstr("light.red_screen"));
  ASSERT_EQ(ask({"set", book, "lamp.light=points"}).code, 0);
  const auto no_points = ask({"light", book});
  EXPECT_EQ(no_points.code, 2);
  EXPECT_THAT(no_points.err, HasSubstr("lamp.spectrum: The spectrum has 0 points"));
}

TEST_F(LightVerb, RefusesALampWithoutSizeAndAPanelThatIsNotThere) {
  const std::string book = make_book({"--order", "6", "--work", "belt"});
  const auto no_panel = ask({"light", book, "--panel", "30"});
  EXPECT_EQ(no_panel.code, 2);
  EXPECT_THAT(no_panel.err, HasSubstr("--panel 30 holds no prisms"));
  ASSERT_EQ(ask({"set", book, "lamp.height_mm=0"}).code, 0);
  const auto no_size = ask({"light", book});
  EXPECT_EQ(no_size.code, 2);
  EXPECT_THAT(no_size.err, HasSubstr("lamp.height_mm is 0 mm"));
}

}  // namespace
}  // namespace prismwright
