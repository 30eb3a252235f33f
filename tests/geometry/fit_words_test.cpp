#include "geometry/fit_words.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <utility>
#include <vector>

namespace prismwright {
namespace {

using ::testing::HasSubstr;

TEST(FitWords, SayLengthsAsTheSheetWantsThem) {
  PanelFit fit{1, "P01-rib-left", "P01-rib-right", {}, {}, {}};
  FitStep step;
  step.marks = {"P01-U01"};
  step.way = FitWay::from_sea_then_in;
  step.into_pocket_mm = 2.54;
  fit.steps = {step};
  FitBlocked blocked;
  blocked.marks = {"P01-U02"};
  blocked.blocked_by = "P01-U03";
  blocked.left_mm = 5.08;
  FitBlocked rib = blocked;
  rib.marks = {fit.second_rib};
  rib.left_mm = 12;
  fit.cannot = {blocked, rib};
  put_in_words(fit);
  EXPECT_THAT(fit.steps[0].words, HasSubstr("2.5 mm square into"));
  EXPECT_THAT(fit.cannot[0].words, HasSubstr("holds it up 5.1 mm before"));
  EXPECT_THAT(fit.cannot[1].words, HasSubstr("holds it up 12 mm before"));
  put_in_words(fit, {true});
  EXPECT_THAT(fit.steps[0].words, HasSubstr("0.098 in square into"));
  EXPECT_THAT(fit.cannot[0].words, HasSubstr("holds it up 0.201 in before"));
  EXPECT_THAT(fit.cannot[1].words, HasSubstr("holds it up 0.472 in before"));
}

PanelFit clashing_with(const FitChange& change) {
  PanelFit fit{1, "P01-rib-left", "P01-rib-right", {}, {}, {}};
  FitBlocked blocked;
  blocked.marks = {"P01-U02"};
  blocked.blocked_by = "P01-rib-left";
  blocked.deep_mm = 0.05;
  blocked.changes = {change};
  fit.cannot = {blocked};
  return fit;
}

std::string told(const FitChange& change, bool inches = false) {
  PanelFit fit = clashing_with(change);
  put_in_words(fit, {inches});
  const std::string& words = fit.cannot.front().words;
  return words.substr(words.find("Set "));
}

TEST(FitWords, SayAPresentLengthAsFinelyAsItIsSet) {
  const FitChange gap{"frame.setting_gap_mm", "Pocket gap", 0.25, 0.3, "", ""};
  EXPECT_EQ(told(gap), "Set Pocket gap (frame.setting_gap_mm) to about 0.3 mm, from 0.25 mm.");
  // 0.25 / 25.4 = 0.00984; 0.3 / 25.4 = 0.01181, and no less than that.
  EXPECT_EQ(told(gap, true), "Set Pocket gap (frame.setting_gap_mm) to about 0.012 in, from 0.01 in.");
}

// 0.98 mm and 1 mm are 0.0386 and 0.0394 in, which both round to 0.039.
TEST(FitWords, NeverSayALengthAlikeBeforeAndAfter) {
  EXPECT_THAT(told({"section.gap_mm", "Setting gap", 0.98, 1, "", ""}, true),
              HasSubstr("to about 0.04 in, from 0.039 in"));
  EXPECT_THAT(told({"frame.pocket_mm", "Pocket depth", 1, 0.98, "", ""}, true),
              HasSubstr("to about 0.038 in, from 0.039 in"));
  EXPECT_THAT(told({"section.upper_focus_mm", "Own focal point", 0.002, 0, "", ""}),
              HasSubstr("to about 0.000 mm, from 0.002 mm"));
}

TEST(FitWords, SayAnglesInDegreesAndChoicesBare) {
  EXPECT_EQ(told({"section.upper_aim_deg", "Own aim", 0, 0, "0.5", "0.2"}),
            "Set Own aim (section.upper_aim_deg) to 0.2 deg, from 0.5 deg.");
  EXPECT_EQ(told({"section.lower_turning", "Turned about", 0, 0, "panel", "lens"}),
            "Set Turned about (section.lower_turning) to lens, from panel.");
}

FitStep step(const std::string& mark, FitWay way, double into_pocket_mm = 0) {
  FitStep step;
  step.marks = {mark};
  step.way = way;
  step.into_pocket_mm = into_pocket_mm;
  return step;
}

std::vector<std::string> words_of_steps(std::vector<FitStep> steps) {
  PanelFit fit{1, "P01-rib-left", "P01-rib-right", {}, {}, {}};
  fit.steps = std::move(steps);
  put_in_words(fit);
  std::vector<std::string> words;
  for (const FitStep& step : fit.steps) words.push_back(step.words);
  return words;
}

TEST(FitWords, SpeakOfPocketsAndBrassOnlyWhereTheyAre) {
  const FitStep laid = step("P01-rib-left", FitWay::laid);
  const FitStep last = step("P01-rib-right", FitWay::square_to_rib);
  const auto bare = words_of_steps({laid, step("P01-U01", FitWay::square_to_rib), last});
  EXPECT_EQ(bare[0], "Lay P01-rib-left down with its inner face upward.");
  EXPECT_EQ(bare[1], "Lower P01-U01 square to P01-rib-left.");
  EXPECT_EQ(bare[2], "Lower P01-rib-right square onto the ends of all prisms.");

  const FitStep rail = step("P01-rail-top", FitWay::screwed);
  const FitStep cross = step("P01-rib-upper", FitWay::screwed);
  const FitStep prism = step("P01-U01", FitWay::square_to_rib, 2.5);
  const auto pocketed = words_of_steps({laid, rail, cross, prism, last});
  EXPECT_EQ(pocketed[0], "Lay P01-rib-left down with its pockets upward.");
  EXPECT_EQ(pocketed[3], "Lower P01-U01 square to P01-rib-left into its pocket.");
  EXPECT_THAT(pocketed[4], HasSubstr("ends of all prisms and screw it to rails and cross ribs."));
  EXPECT_THAT(words_of_steps({laid, rail, last})[2], HasSubstr("and screw it to rails."));
  EXPECT_THAT(words_of_steps({laid, cross, last})[2], HasSubstr("and screw it to cross ribs."));
}

}  // namespace
}  // namespace prismwright
