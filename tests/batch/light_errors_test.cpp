#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>

#include "app/batch/light_errors.h"
#include "tests/support/batch_desk.h"

namespace prismwright {
namespace {

using testing::HasSubstr;

class LightErrors : public BatchDesk {};

TEST_F(LightErrors, StandInTheAnswerWhenAskedFor) {
  const std::string book = make_book({"--order", "4", "--panels", "8"});
  ASSERT_EQ(ask({"set", book, "light.tilt_error_deg=0.4", "light.seed=7", "light.trials=10"}).code, 0);
  const auto whole = ask({"light", book, "--errors", "--json"}).json();
  const auto& errors = whole.at("errors");
  EXPECT_EQ(errors.at("trials"), 10);
  EXPECT_EQ(errors.at("seed"), 7);
  EXPECT_EQ(errors.at("standard_deviations").at("tilt_deg"), 0.4);
  const double share = errors.at("peak_share").at("mean").get<double>();
  EXPECT_GT(share, 0.5);
  EXPECT_LT(share, 1);
  // The sum of the prisms' own beams is the beam that the report maps by itself.
  EXPECT_NEAR(errors.at("planned").at("peak_cd").get<double>() / whole.at("beam").at("peak_cd").get<double>(),
              1, 0.03);
  EXPECT_TRUE(errors.at("tolerances").at(0).at("zone").is_null());
  EXPECT_GT(errors.at("tolerances").at(0).at("tilt_deg").get<double>(), 0.05);
  EXPECT_GE(errors.at("losses").at(0).at("loss_percent_of_peak").get<double>(),
            errors.at("losses").at(1).at("loss_percent_of_peak").get<double>());
  EXPECT_EQ(errors.at("prisms").at(0).at("panel"), 1);
  EXPECT_TRUE(errors.at("prisms").at(0).at("upright").contains("index_deg_per_thousandth"));
}

TEST(ErrorsInTables, NameWhatWasDrawnAndLeaveBlankWhatLiesBeyondTheBounds) {
  SettingErrors errors;
  errors.panel = 2;
  errors.trials = 10;
  errors.seed = 4;
  errors.deviations = {0.05, 0.2, 0.02, 0.0005, 0.5};
  errors.planned = {147000, -0.03, 2.6, 0, 0};
  errors.peak_share = {0.95, 0.01, 0.93, 0.951, 0.97};
  PrismSensitivity prism{"P02-U01", "U01", 2, 5, {}, {}};
  prism.mean[at_of(SettingMove::tilt)] = {0, 1.875};
  prism.spread_deg[at_of(SettingMove::index)] = 20;
  errors.prisms = {prism};
  errors.tolerances = {{"", 1, {0.4, 2.5, 0.28, std::nullopt, 4.5}}};
  errors.losses = {{"U01", ErrorKind::face, 1.25}};
  std::ostringstream out;
  print_errors(errors, out);
  EXPECT_THAT(out.str(), HasSubstr("Setting errors of panel 2: 10 trials, seed 4"));
  EXPECT_THAT(out.str(), HasSubstr("95.0"));
  EXPECT_THAT(out.str(), HasSubstr("1.875"));
  // 20 degrees for a whole unit of index: 0.020 for a thousandth.
  EXPECT_THAT(out.str(), HasSubstr("0.020"));
  EXPECT_THAT(out.str(), HasSubstr("1.25"));
  const Json json = errors_json(errors);
  EXPECT_TRUE(json.at("tolerances").at(0).at("index").is_null());
  EXPECT_EQ(json.at("losses").at(0).at("error"), "face angle");
  EXPECT_NEAR(json.at("prisms").at(0).at("rms").at("index_deg_per_thousandth").get<double>(), 0.02, 1e-12);
}

}  // namespace
}  // namespace prismwright
