#include "geometry/fit_changes.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "core/lens/quantities.h"
#include "geometry/fit_words.h"

namespace prismwright {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;

// One panel of bull's-eye work, all turned about its own axis, with two prisms in every band; parts stand in
// each other, or hold each other up, as each case says.
class FitChangesOf : public ::testing::Test {
 protected:
  FitChangesOf() {
    LensValues& values = plan.values;
    values.brief.work = Work::bullseye;
    values.section.aim_at = AimAt::level;
    values.section.gap_mm = 0.5;
    values.section.upper_rib_mm = 4;
    values.section.lower_rib_mm = 6;
    values.frame.setting_gap_mm = 0.25;
    values.frame.pocket_mm = 5;
    values.frame.end_gap_mm = 0.5;
    values.frame.rib_margin_mm = 8;
    add("P01-U02", ZoneKind::upper);
    add("P01-U01", ZoneKind::upper);
    add("P01-R01a", ZoneKind::ring);
    add("P01-C", ZoneKind::centre);
    add("P01-L01", ZoneKind::lower);
    fit.panel = 1;
    fit.first_rib = "P01-rib-left";
    fit.second_rib = "P01-rib-right";
  }

  void add(const char* mark, ZoneKind kind) {
    PlannedPrism prism;
    prism.mark = mark;
    prism.kind = kind;
    plan.prisms.push_back(prism);
  }

  BandSettings& band(Band band) { return plan.values.section.of(band); }

  std::vector<FitChange> changes(const FitBlocked& blocked) {
    plan.section.input = plan.values.section_input();
    fit.cannot = {blocked};
    fit.cannot.front().changes = changes_for(blocked, fit, plan);
    for (const FitChange& change : fit.cannot.front().changes) expect_in_the_table(change);
    return fit.cannot.front().changes;
  }

  static void expect_in_the_table(const FitChange& change) {
    const Quantity* quantity = find_quantity(change.key);
    ASSERT_NE(quantity, nullptr) << change.key;
    EXPECT_EQ(change.label, quantity->label);
    EXPECT_EQ(change.to.empty(), quantity->unit == "mm") << change.key;
  }

  // 0.12 mm deep in each other.
  std::vector<FitChange> clash(const char* mark, const char* other) {
    FitBlocked blocked;
    blocked.marks = {mark};
    blocked.blocked_by = other;
    blocked.deep_mm = 0.12;
    return changes(blocked);
  }

  std::vector<FitChange> held_up(const char* mark, double left_mm, double off_rib_mm) {
    FitBlocked blocked;
    blocked.marks = {mark};
    blocked.blocked_by = "P01-U01";
    blocked.left_mm = left_mm;
    blocked.off_rib_mm = off_rib_mm;
    return changes(blocked);
  }

  // After changes() were asked for.
  std::string words(bool inches = false) {
    put_in_words(fit, {inches});
    return fit.cannot.front().words;
  }

  LensPlan plan;
  PanelFit fit;
};

void expect_length(const std::vector<FitChange>& changes, const char* key, double now_mm, double to_mm) {
  ASSERT_THAT(changes, SizeIs(1));
  EXPECT_EQ(changes.front().key, key);
  EXPECT_DOUBLE_EQ(changes.front().now_mm, now_mm);
  EXPECT_NEAR(changes.front().to_mm, to_mm, 1e-9);
}

void expect_choice(const FitChange& change, const char* key, const char* now, const char* to) {
  EXPECT_EQ(change.key, key);
  EXPECT_EQ(change.now, now);
  EXPECT_EQ(change.to, to);
}

// 0.5 and 0.12 deep and 0.1 beyond, to the next tenth.
TEST_F(FitChangesOf, PrismsOfOneBandAskForMoreRoomBetweenThem) {
  expect_length(clash("P01-U02", "P01-U01"), "section.gap_mm", 0.5, 0.8);
  EXPECT_THAT(words(), HasSubstr("Set Setting gap (section.gap_mm) to about 0.8 mm, from 0.5 mm."));
  // 0.8 / 25.4 = 0.03150 and 0.5 / 25.4 = 0.01969.
  EXPECT_THAT(words(true), HasSubstr("Set Setting gap (section.gap_mm) to about 0.032 in, from 0.02 in."));
  expect_length(clash("P01-R01a", "P01-C"), "section.gap_mm", 0.5, 0.8);
}

TEST_F(FitChangesOf, AReflectingBandTurnedOtherwiseIsTurnedAsTheRefractingOne) {
  band(Band::upper).turning = BandTurning::lens;
  const auto upper = clash("P01-U01", "P01-R01a");
  ASSERT_THAT(upper, SizeIs(1));
  expect_choice(upper.front(), "section.upper_turning", "lens", "panel");
  EXPECT_THAT(words(), HasSubstr("(section.upper_turning) to panel, from lens."));
  plan.values.brief.work = Work::belt;
  band(Band::lower).turning = BandTurning::panel;
  const auto lower = clash("P01-R01a", "P01-L01");
  ASSERT_THAT(lower, SizeIs(1));
  expect_choice(lower.front(), "section.lower_turning", "panel", "lens");
}

TEST_F(FitChangesOf, AReflectingBandAimedOtherwiseIsAimedAsTheRefractingOne) {
  band(Band::upper).focus_z_mm = 12.34;
  band(Band::upper).aim_deg = 0.5;
  band(Band::refracting).aim_deg = 0.25;
  const auto both = clash("P01-U01", "P01-R01a");
  ASSERT_THAT(both, SizeIs(2));
  EXPECT_EQ(both[0].key, "section.upper_focus_mm");
  EXPECT_EQ(both[0].now_mm, 12.34);
  EXPECT_EQ(both[0].to_mm, 0);
  expect_choice(both[1], "section.upper_aim_deg", "0.5", "0.25");
  EXPECT_THAT(words(), HasSubstr("(section.upper_focus_mm) to about 0 mm, from 12.34 mm, and "));
  EXPECT_THAT(words(), HasSubstr("(section.upper_aim_deg) to 0.25 deg, from 0.5 deg."));
  EXPECT_THAT(words(true), HasSubstr("to about 0 in, from 0.486 in, and "));
  band(Band::lower).aim_deg = 0.25;
  band(Band::lower).focus_z_mm = -3;
  const auto focus = clash("P01-L01", "P01-R01a");
  expect_length(focus, "section.lower_focus_mm", -3, 0);
}

TEST_F(FitChangesOf, AReflectingBandAlikeAsksForAWiderRib) {
  expect_length(clash("P01-U01", "P01-R01a"), "section.upper_rib_mm", 4, 4.3);
  expect_length(clash("P01-R01a", "P01-L01"), "section.lower_rib_mm", 6, 6.3);
  // Rings about one upright axis do not cross, wherever they are aimed.
  plan.values.brief.work = Work::belt;
  band(Band::upper).focus_z_mm = 12;
  expect_length(clash("P01-U01", "P01-R01a"), "section.upper_rib_mm", 4, 4.3);
}

TEST_F(FitChangesOf, BothReflectingBandsAreTurnedAboutTheLensAxis) {
  const auto both = clash("P01-U01", "P01-L01");
  ASSERT_THAT(both, SizeIs(2));
  expect_choice(both[0], "section.upper_turning", "as_work", "lens");
  expect_choice(both[1], "section.lower_turning", "as_work", "lens");
  band(Band::lower).turning = BandTurning::lens;
  const auto one = clash("P01-L01", "P01-U01");
  ASSERT_THAT(one, SizeIs(1));
  expect_choice(one[0], "section.upper_turning", "as_work", "lens");
}

// 0.25 and 0.12, to the next tenth; a pocket's walls need no skin beyond.
TEST_F(FitChangesOf, ASideRibAsksForMoreRoomInItsPockets) {
  expect_length(clash("P01-U01", "P01-rib-left"), "frame.setting_gap_mm", 0.25, 0.4);
  EXPECT_THAT(words(), HasSubstr("(frame.setting_gap_mm) to about 0.4 mm, from 0.25 mm."));
  EXPECT_THAT(words(true), HasSubstr("(frame.setting_gap_mm) to about 0.016 in, from 0.01 in."));
  expect_length(clash("P01-rib-right", "P01-U01"), "frame.setting_gap_mm", 0.25, 0.4);
}

TEST_F(FitChangesOf, ACrossRibAsksForBandsTurnedAlike) {
  EXPECT_THAT(clash("P01-U01", "P01-rib-upper"), IsEmpty()) << "they are";
  EXPECT_THAT(words(), HasSubstr("Make room there."));
  band(Band::upper).turning = BandTurning::lens;
  band(Band::lower).turning = BandTurning::lens;
  for (const char* prism : {"P01-U01", "P01-R01a"}) {
    const auto upper = clash(prism, "P01-rib-upper");
    ASSERT_THAT(upper, SizeIs(1)) << prism;
    expect_choice(upper.front(), "section.upper_turning", "lens", "panel");
  }
  for (const char* prism : {"P01-L01", "P01-R01a"}) {
    const auto lower = clash(prism, "P01-rib-lower");
    ASSERT_THAT(lower, SizeIs(1)) << prism;
    expect_choice(lower.front(), "section.lower_turning", "lens", "panel");
  }
}

TEST_F(FitChangesOf, ARailAsksForABroaderMargin) {
  expect_length(clash("P01-U02", "P01-rail-top"), "frame.rib_margin_mm", 8, 8.3);
}

TEST_F(FitChangesOf, OtherBrassAsksForNothingKnown) {
  EXPECT_THAT(clash("P01-U02", "P01-plate"), IsEmpty());
  EXPECT_THAT(clash("P01-rib-right", "P01-rail-top"), IsEmpty());
}

// It lacks 4.7 - 1.5 = 3.2 mm to be off the rib: a pocket of 5 mm is to be 3.2 and 0.1 shallower.
TEST_F(FitChangesOf, APrismHeldUpInItsPocketAsksForAShallowerOne) {
  expect_length(held_up("P01-U02", 1.5, 4.7), "frame.pocket_mm", 5, 1.7);
  EXPECT_THAT(words(), HasSubstr("(frame.pocket_mm) to about 1.7 mm, from 5 mm."));
  // 1.7 / 25.4 = 0.06693, and no more than that.
  EXPECT_THAT(words(true), HasSubstr("(frame.pocket_mm) to about 0.066 in, from 0.197 in."));
}

// It must come off by what the pockets hold: 5 - 0.5 mm.
TEST_F(FitChangesOf, TheSecondRibHeldUpAsksForShallowerPockets) {
  expect_length(held_up("P01-rib-right", 2.5, 0), "frame.pocket_mm", 5, 2.9);
}

TEST_F(FitChangesOf, NoPocketIsAskedForThatWouldHoldNothing) {
  expect_length(held_up("P01-U02", 0.6, 4.7), "frame.pocket_mm", 5, 0.8);
  EXPECT_THAT(held_up("P01-U02", 0.5, 4.7), IsEmpty()) << "0.7 mm with an end gap of 0.5";
  EXPECT_THAT(words(), HasSubstr("Give shallower pockets"));
}

TEST_F(FitChangesOf, WhatIsHeldUpOffTheRibAsksForNoOtherPocket) {
  EXPECT_THAT(held_up("P01-U02", 4.7, 4.7), IsEmpty());
  EXPECT_THAT(held_up("P01-U02", 30, 0), IsEmpty());
}

}  // namespace
}  // namespace prismwright
