#include "geometry/fit_path.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/base/angle.h"

namespace prismwright {
namespace {

PlannedPrism block_round_lens(double low_r, double high_r, double to_deg) {
  PlannedPrism prism;
  prism.turning = TurningAxis::lens;
  prism.trim = {-to_deg, to_deg, 0, Half::whole, 0, std::nullopt};
  const std::vector<SectionPoint> corners{{low_r, 0}, {high_r, 0}, {high_r, 10}, {low_r, 10}};
  for (std::size_t i = 0; i < 4; ++i) {
    prism.profile.faces.push_back(straight_face(FaceRole::land, corners[i], corners[(i + 1) % 4]));
  }
  return prism;
}

// A wall in the plane y = -x tan(wall_deg), 4 mm thick on its far side.
std::unique_ptr<FitBody> wall_at(double wall_deg) {
  FlatPart part;
  part.thickness_mm = 4;
  part.outline = straight_chain({{0, -20}, {200, -20}, {200, 40}, {0, 40}});
  const double a = -radians(wall_deg);
  return plate_body(part,
                    {{0, 0, 0}, {std::cos(a), std::sin(a), 0}, {0, 0, 1}, {std::sin(a), -std::cos(a), 0}});
}

TEST(FitLeg, GoesRoundTheLensAxisAndBack) {
  const FitLeg leg = FitLeg::swing(radians(-30), 120);
  EXPECT_NEAR(leg.length_mm(), 120 * kPi / 6, 1e-9);
  const SpacePoint p = leg.place_at({100, 0, 7}, leg.length_mm());
  EXPECT_NEAR(p.x, 100 * std::cos(kPi / 6), 1e-9);
  EXPECT_NEAR(p.y, -50, 1e-9);
  EXPECT_NEAR(p.z, 7, 1e-9);
  const SpacePoint home = leg.back().place_at(p, leg.length_mm());
  EXPECT_NEAR(home.x, 100, 1e-9);
  EXPECT_NEAR(home.y, 0, 1e-9);
  EXPECT_EQ(leg.pace_at({60, 0, 0}), 1);
  EXPECT_NEAR(leg.pace_at({0, 240, 0}), 2, 1e-9) << "twice as far out, twice as fast";
}

// A ring piece that ends at 20 deg meets a wall at 35 deg after 15 deg.
TEST(FitPath, StopsATurnAtTheWallThatItMeets) {
  const auto ring = turned_body(block_round_lens(100, 120, 20), 5);
  const auto wall = wall_at(35);
  const auto touch = touch_on_way(*ring, {FitLeg::swing(radians(-30), 120)}, *wall);
  ASSERT_TRUE(touch);
  // It is told when a place is 0.02 mm deep, so up to one step of 0.25 mm late.
  EXPECT_NEAR(touch->after_mm, 120 * radians(15), 0.3);
  EXPECT_TRUE(is_free_way(*ring, {FitLeg::swing(radians(-14.9), 120)}, *wall));
  EXPECT_TRUE(is_free_way(*ring, {FitLeg::swing(radians(30), 120)}, *wall));
}

TEST(FitPath, GoesOnStraightFromWhereATurnEnds) {
  const auto ring = turned_body(block_round_lens(100, 120, 20), 5);
  const auto wall = wall_at(35);
  const FitLeg turn = FitLeg::swing(radians(-10), 120);
  // Its end stands 5 deg from the wall: at radius 100 that is 8.7 mm, and the wall is left behind seaward.
  const SpaceVector to_wall{-std::sin(radians(35)), -std::cos(radians(35)), 0};
  EXPECT_FALSE(is_free_way(*ring, {turn, FitLeg::straight(12 * to_wall)}, *wall));
  EXPECT_TRUE(is_free_way(*ring, {turn, FitLeg::straight(8 * to_wall)}, *wall));
  EXPECT_TRUE(is_free_way(*ring, {turn, FitLeg::straight({0, 300, 0})}, *wall));
}

// Rings about one axis with 0.05 mm between them: a turn keeps the gap, straight ways close it.
TEST(FitPath, LetsARingSlideAlongItsNeighbour) {
  const auto inner = turned_body(block_round_lens(100, 109.95, 30), 5);
  const auto outer = turned_body(block_round_lens(110, 120, 30), 5);
  EXPECT_TRUE(is_free_way(*inner, {FitLeg::swing(radians(70), 110)}, *outer));
  EXPECT_FALSE(is_free_way(*inner, {FitLeg::straight({0, 20, 0})}, *outer));
}

TEST(FitPath, TellsHowDeepPartsStandInEachOther) {
  const auto inner = turned_body(block_round_lens(100, 110.3, 30), 5);
  const auto outer = turned_body(block_round_lens(110, 120, 30), 5);
  const auto found = sunk(*inner, *outer);
  ASSERT_TRUE(found);
  EXPECT_NEAR(found->deep_mm, 0.3, 0.005);
  EXPECT_FALSE(sunk(*turned_body(block_round_lens(100, 110.01, 30), 5), *outer)) << "under 0.02 mm is a touch";
}

}  // namespace
}  // namespace prismwright
