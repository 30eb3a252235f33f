#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/frame/needed_gap.h"
#include "core/frame/setting_check.h"
#include "core/lens/quantities.h"

namespace prismwright {
namespace {

FrameSettings warm_and_wet() {
  FrameSettings frame;
  frame.heat_range_k = 30;
  frame.moisture_percent = 0.4;  // acrylic from 60 % to 100 % relative humidity (makers' handbooks)
  return frame;
}

// 300 mm of acrylic in brass over 30 K: 150 (7e-5 - 2.05e-5) 30 = 0.22275 at each end; 0.4 % of 150 = 0.6.
TEST(PrismGrowth, AddsMoistureToHeat) {
  const PrismGrowth growth = growth_of(300, "acrylic", warm_and_wet());
  EXPECT_NEAR(growth.heat_mm, 0.22275, 1e-12);
  EXPECT_NEAR(growth.moisture_mm, 0.6, 1e-12);
  EXPECT_NEAR(needed_at_end_mm(300, "acrylic", warm_and_wet()), 0.82275, 1e-12);
}

TEST(PrismGrowth, OfGlassKnowsNoMoisture) {
  EXPECT_EQ(growth_of(300, "crown", warm_and_wet()).moisture_mm, 0);
  EXPECT_EQ(growth_of(300, "n-bk7", warm_and_wet()).moisture_mm, 0);
  // Brass grows more than glass: 150 (2.05e-5 - 0.9e-5) 30.
  EXPECT_NEAR(growth_of(300, "crown", warm_and_wet()).heat_mm, 0.05175, 1e-12);
}

TEST(NeededGap, TakesTheThickerOfShimAndGlazingAtASide) {
  FrameSettings frame = warm_and_wet();
  const double growth = growth_of(40, "acrylic", frame).both_mm();
  frame.shim_mm = 0.3;
  frame.glazing_mm = 0.1;
  EXPECT_NEAR(needed_at_side_mm(40, "acrylic", frame), 0.3 + growth, 1e-12);
  frame.glazing_mm = 0.45;
  EXPECT_NEAR(needed_at_side_mm(40, "acrylic", frame), 0.45 + growth, 1e-12);
}

TEST(NeededGap, LeavesGlazingOutBetweenPrisms) {
  FrameSettings frame = warm_and_wet();
  frame.glazing_mm = frame.shim_mm = 5;
  const double expected = growth_of(40, "acrylic", frame).both_mm() + growth_of(30, "acrylic", frame).both_mm();
  EXPECT_NEAR(needed_between_mm(40, 30, "acrylic", frame), expected, 1e-12);
}

// A belt prism between sides at 30 deg, set back by 5 mm: the ends of a ring of radius r are 2 (r sin 30 - ...)
// apart: in the side plane u = sqrt(r^2 - d^2), so half the chord is u sin 30 - d cos 30.
TEST(EndToEnd, OfABeltPrismIsTheChordBetweenItsEnds) {
  PlannedPrism prism;
  prism.turning = TurningAxis::lens;
  prism.trim = {-30, 30, 5, Half::whole, 0, std::nullopt};
  prism.profile.faces = {straight_face(FaceRole::land, {90, 0}, {100, 0}),
                         straight_face(FaceRole::land, {100, 0}, {95, 8}),
                         straight_face(FaceRole::land, {95, 8}, {90, 0})};
  const double u = std::sqrt(100.0 * 100 - 25);
  EXPECT_NEAR(end_to_end_mm(prism), 2 * (u * 0.5 - 5 * std::cos(radians(30))), 1e-9);
}

// About the panel's axis the sides are met where y = x tan 30 less the set-back along y.
TEST(EndToEnd, OfABullsEyeRingIsTheWidthOfThePanelThere) {
  PlannedPrism prism;
  prism.turning = TurningAxis::panel;
  prism.trim = {-30, 30, 5, Half::upper, 0, std::nullopt};
  prism.profile.faces = {straight_face(FaceRole::land, {90, 80}, {100, 80}),
                         straight_face(FaceRole::land, {100, 80}, {95, 88}),
                         straight_face(FaceRole::land, {95, 88}, {90, 80})};
  EXPECT_NEAR(end_to_end_mm(prism), 2 * (100 * std::tan(radians(30)) - 5 / std::cos(radians(30))), 1e-9);
}

// It ends at the level that bounds the half before it gets to the far side; there its sides alone may come
// near.
TEST(SettingCheck, AsksForNoEndWhereAHalfRingOnlyPassesBy) {
  PlannedPrism half;
  half.mark = "P01-R3a";
  half.shape_key = "half";
  half.turning = TurningAxis::panel;
  half.trim = {-60, 20, 0, Half::upper, 0, std::nullopt};
  half.profile.faces = {straight_face(FaceRole::land, {90, 40}, {100, 40}),
                        straight_face(FaceRole::land, {100, 40}, {95, 48}),
                        straight_face(FaceRole::land, {95, 48}, {90, 40})};
  LensPlan plan;
  plan.values.frame.end_gap_mm = 0;
  plan.prisms = {half};
  FramePlan frame;
  for (const Side side : {Side::clockwise, Side::anticlockwise}) {
    RibPlan rib;
    rib.mark = side == Side::clockwise ? "P01-rib-right" : "P01-rib-left";
    rib.side = side;
    rib.pockets = {Pocket{{}, {half.mark}, {}}};
    frame.ribs.push_back(rib);
  }
  const auto checks = check_setting(plan, frame);
  ASSERT_EQ(checks.size(), 2u);
  EXPECT_EQ(checks[0].end.length_mm, 0) << "the side at 60 deg stands 156 mm off, the ring ends at 48";
  EXPECT_TRUE(checks[0].end_enough);
  EXPECT_GT(checks[1].end.length_mm, 50) << "the side at 20 deg is met at 36 mm";
  EXPECT_FALSE(checks[1].end_enough);
}

class SettingOfASample : public ::testing::TestWithParam<Work> {
 protected:
  SettingOfASample() : plan(*plan_lens(starting_values("6", GetParam(), 6))), frame(plan_frame(plan)) {}
  LensPlan plan;
  FramePlan frame;
};

TEST_P(SettingOfASample, IsCheckedForEveryPrismInEveryRibThatHoldsIt) {
  std::size_t held = 0;
  for (const RibPlan& rib : frame.ribs) {
    for (const Pocket& pocket : rib.pockets) held += pocket.marks.size();
  }
  const auto checks = check_setting(plan, frame);
  EXPECT_EQ(checks.size(), held);
  EXPECT_EQ(checks.front().rib, frame.ribs.front().mark);
  for (const SettingCheck& check : checks) {
    EXPECT_NEAR(check.end.needed_mm(), needed_at_end_mm(check.end.length_mm, "acrylic", plan.values.frame),
                1e-12);
    EXPECT_NEAR(check.sides.needed_mm(), needed_at_side_mm(check.sides.extent_mm, "acrylic", plan.values.frame),
                1e-12);
    EXPECT_EQ(check.end_enough, check.end.drawn_mm >= check.end.needed_mm());
    EXPECT_TRUE(check.end.length_mm == 0 || check.end.length_mm > 20) << check.end.length_mm;
  }
}

TEST_P(SettingOfASample, TakesTheLengthsThatItIsGiven) {
  const std::string mark = frame.ribs.front().pockets.front().marks.front();
  const auto checks = check_setting(plan, frame, {{mark, 1000}});
  const auto found = std::find_if(checks.begin(), checks.end(), [&](const auto& c) { return c.mark == mark; });
  ASSERT_NE(found, checks.end());
  EXPECT_EQ(found->end.length_mm, 1000);
  EXPECT_FALSE(found->end_enough);
  EXPECT_NE(advice_on(*found).find("end gap"), std::string::npos);
}

INSTANTIATE_TEST_SUITE_P(OfEitherWork, SettingOfASample, ::testing::Values(Work::belt, Work::bullseye));

struct StandardLens {
  const char* order;
  Work work;
};
class SettingOfAStandardLens : public ::testing::TestWithParam<StandardLens> {};

// The settings that a new lens starts with give its prisms room to grow, however great it is.
TEST_P(SettingOfAStandardLens, GivesEveryPrismRoomToGrow) {
  LensPlan plan = *plan_lens(starting_values(GetParam().order, GetParam().work, 8));
  std::erase_if(plan.prisms, [](const PlannedPrism& prism) { return prism.panel > 1; });
  const auto checks = check_setting(plan, plan_frame(plan));
  EXPECT_GT(checks.size(), 40u);
  for (const SettingCheck& check : checks) EXPECT_EQ(advice_on(check), "");
}

INSTANTIATE_TEST_SUITE_P(LargestAndSmallest, SettingOfAStandardLens,
                         ::testing::Values(StandardLens{"hyper-radial", Work::belt},
                                           StandardLens{"hyper-radial", Work::bullseye},
                                           StandardLens{"1", Work::belt}, StandardLens{"3", Work::bullseye},
                                           StandardLens{"6", Work::belt}));

TEST(SettingAdvice, SaysWhatToGive) {
  SettingCheck check;
  check.mark = "P01-U03";
  check.rib = "P01-rib-left";
  EXPECT_EQ(advice_on(check), "");
  check.sides = {40, 0.3, 0.2, 0.25, 0.1, 0.02};
  check.sides_enough = false;
  EXPECT_EQ(
      advice_on(check),
      "P01-U03 in P01-rib-left: its sides have 0.30 mm and need 0.37 mm (shim 0.20 or glazing 0.25, heat 0.10, "
      "moisture 0.02). Give a setting gap of 0.37 mm or more.");
}

}  // namespace
}  // namespace prismwright
