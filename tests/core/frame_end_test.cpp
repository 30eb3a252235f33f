#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/frame/frame_plan.h"
#include "core/frame/plate_polygons.h"

namespace prismwright {
namespace {

constexpr double kChord_mm = 0.005;

Profile rectangle(double r0, double r1, double z0, double z1) {
  return {{straight_face(FaceRole::joint_lower, {r0, z0}, {r1, z0}),
           straight_face(FaceRole::outer, {r1, z0}, {r1, z1}),
           straight_face(FaceRole::joint_upper, {r1, z1}, {r0, z1}),
           straight_face(FaceRole::inner, {r0, z1}, {r0, z0})}};
}

PlannedPrism ring_prism(Profile profile, TurningAxis turning, double side_deg, Half half) {
  PlannedPrism prism;
  prism.mark = "P01-X";
  prism.profile = std::move(profile);
  prism.turning = turning;
  prism.trim = {-side_deg, side_deg, 2.5, half, 0};
  return prism;
}

// The place of the panel's own frame that a rib-plane point stands for: u e + d n, written out once more here.
struct Place {
  double x;
  double y;
  double z;
};
Place place_of(PlatePoint p, Side side, double side_deg, double depth) {
  const double s = radians(side_deg);
  const double y = p.u * std::sin(s) - depth * std::cos(s);
  return {p.u * std::cos(s) + depth * std::sin(s), side == Side::anticlockwise ? y : -y, p.v};
}

double distance_to_rectangle_rim(double r, double z, double r0, double r1, double z0, double z1) {
  const double outside = std::hypot(std::max({r0 - r, 0.0, r - r1}), std::max({z0 - z, 0.0, z - z1}));
  const double inside = std::min({r - r0, r1 - r, z - z0, z1 - z});
  return inside > 0 ? inside : outside;
}

TEST(BeltEnd, IsTheProfilePushedInBySquareRoot) {
  const auto prism = ring_prism(rectangle(200, 230, -10, 15), TurningAxis::lens, 30, Half::whole);
  const auto ends = end_outlines(prism, Side::clockwise, 4, kChord_mm);
  ASSERT_EQ(ends.size(), 1u);
  const PlateExtent extent = extent_of(ends);
  EXPECT_NEAR(extent.low.u, std::sqrt(200.0 * 200 - 16), 1e-4);
  EXPECT_NEAR(extent.high.u, std::sqrt(230.0 * 230 - 16), 1e-4);
  EXPECT_NEAR(extent.low.v, -10, 1e-4);
  EXPECT_NEAR(extent.high.v, 15, 1e-4);
  const double width = std::sqrt(230.0 * 230 - 16) - std::sqrt(200.0 * 200 - 16);
  EXPECT_NEAR(area_mm2(ends), width * 25, 1e-2);
}

// The flat face x = f crosses the rib's plane in the upright line u cos s + d sin s = f.
TEST(BeltEndWithAFlatFace, BeginsWhereTheFaceMeetsThePlane) {
  auto prism = ring_prism(rectangle(200, 240, -10, 15), TurningAxis::lens, 30, Half::whole);
  prism.trim.flat_inner_mm = 200;
  const double s = radians(30);
  for (const Side side : {Side::clockwise, Side::anticlockwise}) {
    for (const double depth : {2.5, 4.0, 9.0}) {
      const auto ends = end_outlines(prism, side, depth, kChord_mm);
      ASSERT_EQ(ends.size(), 1u);
      const PlateExtent extent = extent_of(ends);
      EXPECT_NEAR(extent.low.u, (200 - depth * std::sin(s)) / std::cos(s), 1e-4);
      EXPECT_NEAR(extent.high.u, std::sqrt(240.0 * 240 - depth * depth), 1e-4);
      EXPECT_NEAR(place_of(extent.low, side, 30, depth).x, 200, 1e-4);
      EXPECT_NEAR(area_mm2(ends), (extent.high.u - extent.low.u) * 25, 1e-2);
    }
  }
}

class BullseyeEnd : public ::testing::TestWithParam<Side> {};

TEST_P(BullseyeEnd, LiesOnTheTurnedRing) {
  const auto prism = ring_prism(rectangle(240, 262, 130, 150), TurningAxis::panel, 22.5, Half::upper);
  const auto ends = end_outlines(prism, GetParam(), 5, kChord_mm);
  ASSERT_EQ(ends.size(), 1u);
  EXPECT_GT(signed_area_mm2(ends.front()), 0);
  for (std::size_t i = 0; i < ends.front().size(); ++i) {
    const PlatePoint a = ends.front()[i];
    const PlatePoint b = ends.front()[(i + 1) % ends.front().size()];
    for (const double share : {0.0, 0.5}) {
      const Place p = place_of({a.u + share * (b.u - a.u), a.v + share * (b.v - a.v)}, GetParam(), 22.5, 5);
      EXPECT_LT(distance_to_rectangle_rim(p.x, std::hypot(p.y, p.z), 240, 262, 130, 150), kChord_mm);
    }
  }
}

TEST_P(BullseyeEnd, LowerHalfIsTheMirrorImage) {
  auto prism = ring_prism(rectangle(240, 262, 130, 150), TurningAxis::panel, 22.5, Half::upper);
  const PlateExtent upper = extent_of(end_outlines(prism, GetParam(), 3, kChord_mm));
  prism.profile = mirrored(prism.profile);
  prism.trim.half = Half::lower;
  const PlateExtent lower = extent_of(end_outlines(prism, GetParam(), 3, kChord_mm));
  EXPECT_NEAR(upper.high.v, -lower.low.v, 1e-4);
  EXPECT_NEAR(upper.low.v, -lower.high.v, 1e-4);
  EXPECT_NEAR(upper.low.u, lower.low.u, 1e-4);
}

INSTANTIATE_TEST_SUITE_P(EitherSide, BullseyeEnd, ::testing::Values(Side::clockwise, Side::anticlockwise));

// A ring of which only the outer part reaches the side plane: what is missing is cut off at the level plane.
// Area by adding up strips of v over u, straight from |v| = sqrt(z^2 - y^2).
TEST(BullseyeEndThatFallsShort, KeepsExactlyWhatReaches) {
  const double depth = 3;
  const double s = radians(22.5);
  const auto half_height = [&](double u, double z) {
    const double y = u * std::sin(s) - depth * std::cos(s);
    return std::sqrt(std::max(0.0, z * z - y * y));
  };
  const double from = (240 - depth * std::sin(s)) / std::cos(s);
  const double to = (262 - depth * std::sin(s)) / std::cos(s);
  double expected = 0;
  constexpr int kStrips = 200000;
  for (int i = 0; i < kStrips; ++i) {
    const double u = from + (i + 0.5) * (to - from) / kStrips;
    expected += (half_height(u, 112) - half_height(u, 95)) * (to - from) / kStrips;
  }
  const auto prism = ring_prism(rectangle(240, 262, 95, 112), TurningAxis::panel, 22.5, Half::upper);
  const auto ends = end_outlines(prism, Side::clockwise, depth, kChord_mm);
  // Chords lie within 0.005 mm of an outline some 130 mm long.
  EXPECT_NEAR(area_mm2(ends), expected, 0.3);
  EXPECT_GE(extent_of(ends).low.v, 0);
}

TEST(WholeRing, IsCutTwiceWhereItsHoleClearsThePlane) {
  const auto prism = ring_prism(rectangle(240, 262, 130, 150), TurningAxis::panel, 22.5, Half::whole);
  EXPECT_EQ(end_outlines(prism, Side::anticlockwise, 3, kChord_mm).size(), 2u);
}

TEST(EndOutlines, AreEmptyWhereThePrismDoesNotReach) {
  const auto small = ring_prism(rectangle(240, 262, 20, 40), TurningAxis::panel, 22.5, Half::whole);
  EXPECT_TRUE(end_outlines(small, Side::clockwise, 5, kChord_mm).empty());
  const auto ring = ring_prism(rectangle(240, 262, 130, 150), TurningAxis::panel, 22.5, Half::upper);
  EXPECT_TRUE(end_outlines(ring, Side::clockwise, 2.4, kChord_mm).empty()) << "nearer than the prism's own end";
  const auto of_two = ring_prism(rectangle(240, 262, 130, 150), TurningAxis::panel, 90, Half::upper);
  EXPECT_TRUE(end_outlines(of_two, Side::clockwise, 5, kChord_mm).empty()) << "sides square to the axis";
}

}  // namespace
}  // namespace prismwright
