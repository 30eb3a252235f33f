#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "core/base/angle.h"
#include "core/light/bench_check.h"
#include "core/light/light_path.h"
#include "core/optics/laser_bench.h"
#include "tests/support/planned_lens.h"
#include "tests/support/sample_lenses.h"

namespace prismwright {
namespace {

using testing::HasSubstr;

BenchPlan bench_of(const LensPlan& plan, const BenchSettings& settings = {}) {
  auto bench = bench_plan(plan, settings);
  EXPECT_TRUE(bench.ok()) << (bench.ok() ? "" : bench.problem().text);
  return bench.ok() ? *bench : BenchPlan{};
}

const LensPlan& belt() {
  static const LensPlan plan = plan_of(sixth_order_belt(Faces::true_curve));
  return plan;
}
const BenchPlan& belt_bench() {
  static const BenchPlan bench = bench_of(belt());
  return bench;
}

/// A profile turned in its section about a place, nose up, degrees. Shares nothing with the bench's plan.
Profile turned_about(Profile profile, SectionPoint about, double tilt_deg) {
  const double c = std::cos(radians(tilt_deg));
  const double s = std::sin(radians(tilt_deg));
  const auto turn = [&](SectionPoint& p) {
    const double r = p.r - about.r;
    const double z = p.z - about.z;
    p = {about.r + c * r - s * z, about.z + s * r + c * z};
  };
  for (Face& face : profile.faces) {
    for (SectionPoint& p : face.points) turn(p);
    turn(face.centre);
    for (SectionDirection& d : face.tangents) d = SectionDirection::at(d.elevation() + radians(tilt_deg));
  }
  return profile;
}

/// Height of the laser's spot on the board with one prism's profile put in the place of the planned one.
double height_with(LensPlan plan, const BenchAim& aim, const Profile& profile, double board_mm) {
  std::erase_if(plan.prisms, [&](const PlannedPrism& prism) { return prism.panel != aim.panel; });
  for (PlannedPrism& prism : plan.prisms)
    if (prism.mark == aim.mark) prism.profile = profile;
  const LightLens lens(plan);
  const PathFinder finder(lens, {plan.section.input.index, 0});
  const LightPath path = finder.follow(
      {{0, 0, aim.stands_over_mm}, direction_at(radians(aim.azimuth_deg), radians(aim.elevation_deg))});
  EXPECT_EQ(path.end, PathEnd::free);
  EXPECT_TRUE(path.own_way) << aim.mark;
  return path.last.from.z + (board_mm - path.last.from.x) * path.last.along.z / path.last.along.x;
}

SectionPoint seat_of(const BenchAim& aim) { return {std::hypot(aim.meets.x, aim.meets.y), aim.meets.z}; }

BenchReading reading_of(const std::string& mark, double height_mm, double aside_mm = 0) {
  BenchReading reading;
  reading.mark = mark;
  reading.height_mm = height_mm;
  reading.aside_mm = aside_mm;
  reading.board_mm = 5000;
  return reading;
}

TEST(BenchPlan, AimsAtEveryPrismOfEveryKindOfLens) {
  for (const LensValues& values :
       {fourth_order_bullseye(Faces::true_curve), sixth_order_belt(Faces::arc),
        first_order_unequal(Faces::true_curve), two_panels(Work::bullseye, Faces::true_curve),
        aimed_at_the_horizon(sixth_order_belt(Faces::true_curve)), every_band_its_own_way()}) {
    const LensPlan plan = plan_of(values);
    const BenchPlan bench = bench_of(plan);
    ASSERT_EQ(bench.aims.size(), plan.prisms.size());
    for (std::size_t i = 0; i < bench.aims.size(); ++i) {
      EXPECT_EQ(bench.aims[i].mark, plan.prisms[i].mark);
      EXPECT_EQ(bench.aims[i].trouble, "");
      EXPECT_GT(bench.aims[i].seat_mm, 1);
    }
  }
}

TEST(BenchPlan, SpotsOfABeltLieWhereTheSectionsOwnTracerPutsThem) {
  const SectionTracer tracer(belt().section);
  int compared = 0;
  for (const BenchAim& aim : belt_bench().aims) {
    if (aim.panel != 1) continue;
    const PlannedPrism& prism = *belt().find(aim.mark);
    const RayPath path = tracer.trace(aim.elevation_deg, band_of(prism.kind));
    const auto spot = spot_on_board(path, 5000);
    ASSERT_TRUE(spot) << aim.mark;
    EXPECT_NEAR(aim.spot_at(5000).height_mm, spot->place.z, 2e-3) << aim.mark;
    EXPECT_NEAR(aim.spot_at(5000).aside_mm, 0, 1e-9);
    ++compared;
  }
  EXPECT_EQ(compared, 33);
}

TEST(BenchPlan, ALevelBeamsSpotLiesAsHighAsItsRayLeavesAtEveryDistance) {
  const BenchPlan bench = bench_of(plan_of(fourth_order_bullseye(Faces::true_curve)));
  for (const BenchAim& aim : bench.aims) {
    // A millionth of a radian over 20 m.
    EXPECT_NEAR(aim.spot_at(20000).height_mm, aim.leaves.z, 0.02) << aim.mark;
    EXPECT_NEAR(aim.spot_at(20000).aside_mm, aim.leaves.y, 0.02) << aim.mark;
  }
  EXPECT_NEAR(bench.find("P01-C")->spot_at(5000).height_mm, 0, 1e-9);
  EXPECT_NEAR(bench.find("P01-R6a")->spot_at(5000).height_mm, -bench.find("P01-R6b")->spot_at(5000).height_mm,
              1e-9);
}

TEST(BenchPlan, ABandWithItsOwnFocalPointHasTheLaserOffThePrincipalFocus) {
  const BenchPlan bench = bench_of(plan_of(every_band_its_own_way()));
  const BenchAim& upper = *bench.find("P01-U05");
  EXPECT_EQ(upper.stands_over_mm, 3);
  EXPECT_EQ(bench.find("P01-R6a")->stands_over_mm, 0);
  // Its beam falls by 2 degrees.
  EXPECT_NEAR(upper.spot_at(5000).height_mm, upper.leaves.z - (5000 - upper.leaves.x) * std::tan(radians(2)),
              5e-3);
}

TEST(BenchPlan, AzimuthsAreThoseOfTheLens) {
  const BenchPlan bench = bench_of(plan_of(fourth_order_bullseye(Faces::true_curve)));
  EXPECT_NEAR(bench.find("P01-U05")->azimuth_deg, 0, 1e-9);
  EXPECT_NEAR(bench.find("P03-U05")->azimuth_deg, 90, 1e-9);
  EXPECT_NEAR(bench.find("P03-U05")->meets.x, 0, 1e-9);
  EXPECT_GT(bench.find("P03-U05")->meets.y, 100);
}

TEST(BenchPlan, APieceOffTheMiddleOfItsPanelIsAimedAtInItsOwnMiddle) {
  const BenchPlan bench = bench_of(plan_of(first_order_unequal(Faces::true_curve)));
  const BenchAim& aim = *bench.find("P03-U08");
  const PanelPlace place = place_panels(first_order_unequal(Faces::true_curve).panels)[2];
  EXPECT_LT(aim.azimuth_deg, place.axis_deg - 10) << "more of its panel lies to the right of its axis";
  EXPECT_LT(aim.spot_at(5000).aside_mm, -100);
}

TEST(BenchPlan, TiltingARefractingPrismMovesItsSpotAsForetold) {
  for (const char* mark : {"P01-R9a", "P01-R6a", "P01-R7b", "P01-C"}) {
    const BenchAim& aim = *belt_bench().find(mark);
    const Profile& as_drawn = belt().find(mark)->profile;
    const double tilt_deg = 0.3;
    const double up = height_with(belt(), aim, turned_about(as_drawn, seat_of(aim), tilt_deg), 5000);
    const double down = height_with(belt(), aim, turned_about(as_drawn, seat_of(aim), -tilt_deg), 5000);
    // Far off, so that what matters is the turn; the place where it leaves moves by far less.
    const double foretold = 2 * std::tan(radians(aim.turn_per_tilt * tilt_deg)) * (5000 - aim.leaves.x);
    EXPECT_NEAR(up - down, foretold, 0.01 * std::abs(foretold) + 0.02) << mark;
  }
}

TEST(BenchPlan, TiltingAReflectingPrismTurnsItsBeamAlmostAsAMirrorDoes) {
  for (const BenchAim& aim : belt_bench().aims) {
    const PlannedPrism& prism = *belt().find(aim.mark);
    if (is_refracting(prism.kind)) continue;
    EXPECT_NEAR(aim.turn_per_tilt, 2, 0.05) << aim.mark;
    if (aim.panel != 1) continue;
    const Profile tilted = turned_about(prism.profile, seat_of(aim), 0.1);
    const double rise = height_with(belt(), aim, tilted, 5000) - aim.spot_at(5000).height_mm;
    EXPECT_NEAR(rise, radians(0.1 * aim.turn_per_tilt) * (5000 - aim.leaves.x), 0.01 * rise) << aim.mark;
  }
}

TEST(BenchPlan, MovingAPrismUpTurnsItsBeamAsForetold) {
  for (const char* mark : {"P01-R6a", "P01-C", "P01-U05", "P01-L02"}) {
    const BenchAim& aim = *belt_bench().find(mark);
    Profile raised = belt().find(mark)->profile;
    for (Face& face : raised.faces) {
      for (SectionPoint& p : face.points) p.z += 0.5;
      face.centre.z += 0.5;
    }
    // So far off that the place where the light leaves, itself moved, counts for nothing.
    const double rise = height_with(belt(), aim, raised, 500000) - aim.spot_at(500000).height_mm;
    EXPECT_NEAR(rise, radians(0.5 * aim.turn_per_mm) * (500000 - aim.leaves.x), 0.01 * std::abs(rise)) << mark;
  }
}

TEST(BenchPlan, ARedLaserIsBentLessThanTheDesignsLight) {
  const BenchPlan red = bench_of(belt(), {std::nullopt, 650});
  EXPECT_EQ(red.laser_nm, 650);
  EXPECT_EQ(belt_bench().laser_nm, 587.6);
  const double up =
      red.find("P01-R6a")->spot_at(5000).height_mm - belt_bench().find("P01-R6a")->spot_at(5000).height_mm;
  // A thin prism that turns by D turns by D dn / (n - 1) less: 23 deg, with acrylic's dn of about -0.0027.
  EXPECT_NEAR(up, radians(22.99) * 0.0027 / 0.4918 * 4840, 0.35 * up);
  EXPECT_GT(up, 5);
}

TEST(BenchPlan, ABoardWithinTheLensIsRefused) {
  const auto refused = bench_plan(plan_of(first_order_unequal(Faces::true_curve)), {600, std::nullopt});
  ASSERT_FALSE(refused.ok());
  EXPECT_EQ(refused.problem().code, "bench.board");
  EXPECT_THAT(refused.problem().text, HasSubstr("600 mm from the focus, within the lens"));
  EXPECT_TRUE(bench_plan(plan_of(first_order_unequal(Faces::true_curve)), {6000, std::nullopt}).ok());
}

TEST(BenchMend, TheErrorIsTheAngleWhereALevelBeamLeaves) {
  const BenchAim& aim = *belt_bench().find("P01-U05");
  const BenchMend mend = mend_of(aim, reading_of("P01-U05", 17, -40));
  EXPECT_NEAR(mend.error_deg, degrees(std::atan(17 / (5000 - aim.leaves.x))), 1e-7);
  EXPECT_NEAR(mend.aside_deg, -degrees(std::atan(40 / (5000 - aim.leaves.x))), 1e-7);
  EXPECT_NEAR(mend.tilt_deg, -mend.error_deg / aim.turn_per_tilt, 1e-12);
  EXPECT_NEAR(mend.shim_mm, std::tan(radians(-mend.tilt_deg)) * aim.seat_mm, 1e-12);
}

TEST(BenchMend, AReadingTakenNearerIsJudgedByItsOwnBoard) {
  const BenchAim& aim = *belt_bench().find("P01-U05");
  BenchReading near = reading_of("P01-U05", 17);
  near.board_mm = 2000;
  EXPECT_NEAR(mend_of(aim, near).error_deg, degrees(std::atan(17 / (2000 - aim.leaves.x))), 1e-6);
}

TEST(BenchMend, AShimWorkedOutFromAPlantedTiltUndoesIt) {
  for (const char* mark : {"P01-U01", "P01-U06", "P01-U09", "P01-L02", "P01-L04"}) {
    for (const double planted_deg : {0.2, -0.2}) {
      const BenchAim& aim = *belt_bench().find(mark);
      const Profile& as_drawn = belt().find(mark)->profile;
      const Profile tilted = turned_about(as_drawn, seat_of(aim), planted_deg);
      const double expected = aim.spot_at(5000).height_mm;
      const double read = height_with(belt(), aim, tilted, 5000) - expected;
      const BenchMend mend = mend_of(aim, reading_of(mark, read));
      EXPECT_FALSE(mend.within);
      EXPECT_NEAR(mend.tilt_deg, -planted_deg, 0.02 * 0.2) << mark;
      const Profile mended = turned_about(tilted, seat_of(aim), mend.tilt_deg);
      EXPECT_LT(std::abs(height_with(belt(), aim, mended, 5000) - expected), 0.02 * std::abs(read)) << mark;
    }
  }
}

/// The prism hinged on the edge of its entry face that is not shimmed, the shimmed edge lifted off the seat.
Profile shimmed(const Profile& profile, const BenchMend& mend) {
  const Face& entry = *profile.find(FaceRole::entry);
  const bool end_is_outer = entry.end().r > entry.start().r;
  const bool lift_end = (mend.edge == "outer") == end_is_outer;
  const SectionPoint hinge = lift_end ? entry.start() : entry.end();
  const SectionPoint lifted = lift_end ? entry.end() : entry.start();
  // Away from the light is into the glass, which lies on the left of the walk from start to end.
  const SectionDirection into_glass = SectionDirection::along(entry.end() - entry.start()).quarter_turn();
  const double angle = degrees(std::atan(mend.shim_mm / distance(hinge, lifted)));
  const Profile up = turned_about(profile, hinge, angle);
  const Face& moved = *up.find(FaceRole::entry);
  const SectionPoint now = lift_end ? moved.end() : moved.start();
  return dot(now - lifted, into_glass) > 0 ? up : turned_about(profile, hinge, -angle);
}

TEST(BenchMend, LiftingTheNamedEdgeByTheShimBringsTheSpotBack) {
  for (const char* mark : {"P01-U03", "P01-U08", "P01-L03"}) {
    for (const double planted_deg : {0.2, -0.2}) {
      const BenchAim& aim = *belt_bench().find(mark);
      const Profile tilted = turned_about(belt().find(mark)->profile, seat_of(aim), planted_deg);
      const double expected = aim.spot_at(5000).height_mm;
      const double read = height_with(belt(), aim, tilted, 5000) - expected;
      const BenchMend mend = mend_of(aim, reading_of(mark, read));
      EXPECT_EQ(mend.words,
                "shim the " + mend.edge + " edge " + (mend.shim_mm > 0.065 ? "0.07" : "0.06") + " mm");
      // Hinged on the other edge, the prism moves by half the shim too, which the second reading would find.
      EXPECT_LT(std::abs(height_with(belt(), aim, shimmed(tilted, mend), 5000) - expected),
                0.05 * std::abs(read))
          << mark << ", " << mend.words;
    }
  }
}

TEST(BenchMend, ARefractingPrismIsMovedSinceTiltingHardlyTurnsItsBeam) {
  const BenchAim& aim = *belt_bench().find("P01-R6a");
  const BenchMend mend = mend_of(aim, reading_of("P01-R6a", 20));
  EXPECT_THAT(mend.words, HasSubstr("move it down 0.65 mm"));
  EXPECT_NEAR(mend.move_mm * aim.turn_per_mm, -mend.error_deg, 1e-12);
}

TEST(BenchMend, WithinToleranceAPrismIsLeft) {
  const BenchAim& aim = *belt_bench().find("P01-U05");
  const double edge_mm = std::tan(radians(0.05)) * (5000 - aim.leaves.x);
  EXPECT_EQ(mend_of(aim, reading_of("P01-U05", edge_mm - 0.01)).words, "leave it");
  EXPECT_THAT(mend_of(aim, reading_of("P01-U05", edge_mm + 0.01)).words, HasSubstr("shim the"));
  EXPECT_EQ(mend_of(aim, reading_of("P01-U05", edge_mm + 0.01), 0.1).words, "leave it");
  EXPECT_THAT(mend_of(aim, reading_of("P01-U05", 0, -20)).words, HasSubstr("0.24 deg to the right"));
  EXPECT_FALSE(mend_of(aim, reading_of("P01-U05", 0.8 * edge_mm, 0.8 * edge_mm)).within);
}

TEST(BenchCheck, TheFirstReadingIsBeforeAndTheLastIsNow) {
  const std::vector<BenchReading> readings = {reading_of("P01-U05", 30), reading_of("P01-U02", -20),
                                              reading_of("P01-U05", 10), reading_of("P01-U05", 2),
                                              reading_of("P77-U05", 900)};
  const std::vector<BenchedPrism> prisms = benched(belt_bench(), readings);
  const BenchSummary sum = summary_of(prisms);
  EXPECT_EQ(sum.prisms, 198);
  EXPECT_EQ(sum.read, 2);
  EXPECT_EQ(sum.within, 1);
  EXPECT_EQ(sum.worst, "P01-U02");
  const auto off = [](const char* mark, double mm) {
    return degrees(std::atan(mm / (5000 - belt_bench().find(mark)->leaves.x)));
  };
  EXPECT_NEAR(sum.worst_deg, off("P01-U02", 20), 1e-6);
  EXPECT_NEAR(sum.rms_before_deg, std::hypot(off("P01-U05", 30), off("P01-U02", 20)) / std::sqrt(2), 1e-6);
  EXPECT_NEAR(sum.rms_now_deg, std::hypot(off("P01-U05", 2), off("P01-U02", 20)) / std::sqrt(2), 1e-6);
}

TEST(BenchCheck, WithoutReadingsNothingIsWorst) {
  const BenchSummary sum = summary_of(benched(belt_bench(), {}));
  EXPECT_EQ(sum.read, 0);
  EXPECT_EQ(sum.worst, "");
  EXPECT_EQ(sum.rms_now_deg, 0);
}

TEST(BenchCheck, WhatCannotBeReadIsRefused) {
  EXPECT_TRUE(check_reading(belt_bench(), reading_of("P01-U05", -1250, 1250)).ok());
  EXPECT_THAT(check_reading(belt_bench(), reading_of("P01-U77", 1)).problem().text,
              HasSubstr("no prism P01-U77"));
  EXPECT_THAT(check_reading(belt_bench(), reading_of("P01-U05", 1300)).problem().text,
              HasSubstr("The height is 1300 mm: a spot lies within 1250 mm"));
  EXPECT_THAT(check_reading(belt_bench(), reading_of("P01-U05", 0, -1300)).problem().text,
              HasSubstr("-1300 mm"));
  EXPECT_FALSE(check_reading(belt_bench(), reading_of("P01-U05", std::nan(""))).ok());
  BenchReading near = reading_of("P01-U05", 0);
  near.board_mm = 50;
  EXPECT_EQ(check_reading(belt_bench(), near).problem().code, "bench.board");
}

}  // namespace
}  // namespace prismwright
