#include "geometry/fit_words.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

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

}  // namespace
}  // namespace prismwright
