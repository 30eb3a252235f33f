#include "core/optics/laser_bench.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "core/base/angle.h"

namespace prismwright {
namespace {

RayPath ray_leaving(double elevation_deg, SectionPoint from, double direction_deg) {
  RayPath path;
  path.elevation_deg = elevation_deg;
  path.fate = Fate::stray;
  path.points = {{0, 0}, from};
  RayMeeting out;
  out.direction_deg = direction_deg;
  path.meetings.push_back(out);
  return path;
}

TEST(LaserBoard, RayThatMissedTheGlassStrikesTheBoardAtItsOwnSlope) {
  RayPath path;
  path.elevation_deg = 45;
  path.fate = Fate::escaped;
  path.points = {{0, 0}};
  const auto spot = spot_on_board(path, 1000);
  ASSERT_TRUE(spot);
  EXPECT_NEAR(spot->place.z, 1000, 1e-9);
  EXPECT_NEAR(spot->slope_deg, 45, 1e-12);
}

TEST(LaserBoard, HeightOverTheLevelMarkGivesTheErrorBack) {
  // Bench reading of a setting error: atan(h / D), D from the place where the ray leaves the glass.
  const auto spot = spot_on_board(ray_leaving(30, {270, 150}, 0.4), 1270);
  ASSERT_TRUE(spot);
  EXPECT_NEAR(degrees(std::atan(spot->over_aim_mm / 1000)), 0.4, 1e-12);
  EXPECT_NEAR(spot->place.z, 150 + spot->over_aim_mm, 1e-12);
}

TEST(LaserBoard, NoSpotWhereTheRayEndsTurnsBackOrIsPastTheBoard) {
  RayPath lost = ray_leaving(30, {270, 150}, 0);
  lost.fate = Fate::lost_land;
  EXPECT_FALSE(spot_on_board(lost, 1000));
  EXPECT_FALSE(spot_on_board(ray_leaving(30, {270, 150}, 120), 1000));
  EXPECT_FALSE(spot_on_board(ray_leaving(30, {270, 150}, 0), 269));
}

class FanOfFourthOrder : public testing::Test {
 protected:
  Section section = solve_section({}).value();
  SectionTracer tracer{section};
};

TEST_F(FanOfFourthOrder, RisesAndStaysWithinTheSection) {
  const RayFan fan = fan_of_rays(tracer, section, 80);
  ASSERT_GE(fan.rays.size(), 80u);
  for (std::size_t i = 1; i < fan.rays.size(); ++i)
    EXPECT_LT(fan.rays[i - 1].elevation_deg, fan.rays[i].elevation_deg);
  EXPECT_GE(fan.rays.front().elevation_deg, section.lowest_deg);
  EXPECT_LE(fan.rays.back().elevation_deg, section.highest_deg);
}

TEST_F(FanOfFourthOrder, EveryZoneGetsALevelRayAndEveryFateOfTheProofIsSeen) {
  const RayFan fan = fan_of_rays(tracer, section, 20);
  for (const Zone& zone : section.zones) {
    const bool lit = std::any_of(fan.rays.begin(), fan.rays.end(), [&](const RayPath& path) {
      return path.zone == zone.mark && path.fate == Fate::level;
    });
    EXPECT_TRUE(lit) << zone.mark;
  }
  const Proof proof = prove(section);
  for (int fate = 0; fate < kFates; ++fate) {
    if (proof.share[fate] < 0.002) continue;  // below the width of a run that the fan promises to find
    const bool seen = std::any_of(fan.rays.begin(), fan.rays.end(),
                                  [&](const RayPath& path) { return static_cast<int>(path.fate) == fate; });
    EXPECT_TRUE(seen) << name_of(static_cast<Fate>(fate));
  }
}

TEST_F(FanOfFourthOrder, OfTheProofsRunsShowsEveryFateThatTheProofFinds) {
  const Proof proof = prove(section);
  const RayFan fan = fan_of_rays(tracer, section, proof, 20);
  for (std::size_t i = 1; i < fan.rays.size(); ++i)
    EXPECT_LT(fan.rays[i - 1].elevation_deg, fan.rays[i].elevation_deg);
  for (int fate = 0; fate < kFates; ++fate) {
    const bool seen = std::any_of(fan.rays.begin(), fan.rays.end(),
                                  [&](const RayPath& path) { return static_cast<int>(path.fate) == fate; });
    EXPECT_EQ(seen, proof.share[fate] > 0) << name_of(static_cast<Fate>(fate));
  }
  EXPECT_LT(fan.rays.size(), 20 + proof.lamp.size());
  const RayFan stepped = fan_of_rays(tracer, section, 20);
  ASSERT_TRUE(fan.beam && stepped.beam);
  EXPECT_NEAR(fan.beam->to_mm, stepped.beam->to_mm, 0.5);
}

TEST_F(FanOfFourthOrder, BeamReachesFromTheLowestToTheHighestLevelRay) {
  const RayFan fan = fan_of_rays(tracer, section, 80);
  ASSERT_TRUE(fan.beam);
  for (const RayPath& path : fan.rays) {
    if (path.fate != Fate::level) continue;
    EXPECT_GE(path.points.back().z, fan.beam->from_mm - 0.5);
    EXPECT_LE(path.points.back().z, fan.beam->to_mm + 0.5);
  }
}

TEST_F(FanOfFourthOrder, StopsForTheLaserRiseAndHoldEachZonesOwnRay) {
  const std::vector<double> stops = zone_middles_deg(section);
  std::size_t rings = 0;
  for (const Zone& zone : section.zones) rings += zone.kind == ZoneKind::ring;
  EXPECT_EQ(stops.size(), section.zones.size() + rings);
  EXPECT_TRUE(std::is_sorted(stops.begin(), stops.end()));
  for (const Zone& zone : section.zones) EXPECT_EQ(tracer.trace(middle_deg(zone)).zone, zone.mark);
}

TEST_F(FanOfFourthOrder, LostLightIsMarkedWhereItsRayEnds) {
  const RayFan fan = fan_of_rays(tracer, section, 80);
  int marked = 0;
  for (const RayPath& path : fan.rays) {
    const auto place = place_of_loss(path);
    EXPECT_EQ(place.has_value(), !leaves_lens(path.fate));
    if (!place || path.fate != Fate::lost_land) continue;
    EXPECT_LT(distance(*place, path.points.back()), 1e-12);
    ++marked;
  }
  EXPECT_GT(marked, 0) << "half a millimetre of land on every corner takes some light";
}

}  // namespace
}  // namespace prismwright
