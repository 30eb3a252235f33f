#include "core/frame/cutter_radius.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "core/base/angle.h"
#include "core/frame/frame_plan.h"
#include "core/frame/plate_polygons.h"
#include "core/frame/plate_step.h"
#include "core/lens/quantities.h"

namespace prismwright {
namespace {

/// A straight-sided opening 40 mm high whose right wall kinks inward by `kink_deg` at its middle.
PlateChain kinked_opening(double kink_deg) {
  const double away = 20 * std::tan(radians(kink_deg / 2));
  return straight_chain({{0, -20}, {10, -20}, {10 + away, 0}, {10, 20}, {0, 20}});
}

/// The opening with corners of that radius: shrunk and grown again, so that only the kink stays keen.
PlateChain stadium_with_kink(double radius, double kink_deg) {
  const double half = radians(kink_deg) / 2;
  // Two lines that meet at (30, -h) with a turn of the kink, closed by half circles at both ends and a line.
  const PlatePoint left{0, 0}, middle{30, -30 * std::tan(half)}, right{60, 0};
  const PlatePoint up_left = left + 2 * radius * PlateVector{std::sin(half), std::cos(half)};
  const PlatePoint up_right = right + 2 * radius * PlateVector{-std::sin(half), std::cos(half)};
  const auto half_way = [](PlatePoint a, PlatePoint b) { return PlatePoint{(a.u + b.u) / 2, (a.v + b.v) / 2}; };
  return {straight_step(left, middle),
          straight_step(middle, right),
          {right, up_right, kPi, half_way(right, up_right), radius},
          straight_step(up_right, up_left),
          {up_left, left, kPi, half_way(up_left, left), radius}};
}

TEST(CutterRadius, IsThatOfTheTightestArc) {
  EXPECT_EQ(cutter_radius_mm(circle_chain({3, 4}, 7), CutSide::inside_of_chain), 7);
  EXPECT_EQ(cutter_radius_mm(circle_chain({3, 4}, 7), CutSide::outside_of_chain),
            std::numeric_limits<double>::infinity());
}

TEST(CutterRadius, IsNoughtAtASharpCorner) {
  EXPECT_EQ(cutter_radius_mm(kinked_opening(2), CutSide::inside_of_chain), 0) << "its four corners";
}

TEST(CutterRadius, IsNotToldByAKinkOfADegreeOrTwo) {
  for (const double kink : {1.0, 2.0, 4.0}) {
    const PlateChain chain = stadium_with_kink(3, kink);
    // The half circles turn on a little beyond the lines they join: hollow, not keen.
    const double radius = cutter_radius_mm(chain, CutSide::inside_of_chain);
    EXPECT_GT(radius, 0.97 * 3) << kink;
    EXPECT_LT(radius, 3.05) << kink;
  }
  EXPECT_EQ(least_inside_radius_mm(stadium_with_kink(3, 4), CutSide::inside_of_chain), 0)
      << "the steps alone tell of a sharp corner";
}

// A disc of radius r leaves r (1 / cos(20 deg) - 1) = 0.0642 r at a kink of 40 deg: 0.01 mm for r = 0.156 mm.
TEST(CutterRadius, IsAsSmallAsAKeenerKinkAsksFor) {
  const double radius = cutter_radius_mm(stadium_with_kink(3, 40), CutSide::inside_of_chain);
  EXPECT_NEAR(radius, 0.156, 0.01);
}

// A corner of 90 deg in nine kinks of 10 deg along an arc of radius 2 is a corner of radius 2, though each kink
// alone would let a disc of 2.6 mm by.
TEST(CutterRadius, SeesKinksThatStandTogetherAsOneCorner) {
  PlateOutline outline = {{20, 0}, {20, 20}, {0, 20}};
  const PlatePoint centre{2, 2};
  for (int i = 0; i <= 9; ++i) {
    const double at = kPi + radians(10 * i);
    outline.push_back({centre.u + 2 * std::cos(at), centre.v + 2 * std::sin(at)});
  }
  PlateChain chain = straight_chain(outline);
  // The three other corners are rounded with radius 5, so that they tell nothing.
  PlateOutline rounded;
  const auto corner = [&](PlatePoint c, double from) {
    for (int i = 0; i <= 90; ++i)
      rounded.push_back({c.u + 5 * std::cos(from + radians(i)), c.v + 5 * std::sin(from + radians(i))});
  };
  corner({15, 5}, -kPi / 2);
  corner({15, 15}, 0);
  corner({5, 15}, kPi / 2);
  for (int i = 0; i <= 9; ++i) rounded.push_back(outline[static_cast<std::size_t>(3 + i)]);
  chain = straight_chain(rounded);
  const double radius = cutter_radius_mm(chain, CutSide::inside_of_chain);
  EXPECT_GT(radius, 1.9);
  EXPECT_LT(radius, 2.1);
}

// A stadium of radius 3 whose half circles begin with 3 deg of an arc of 1.5: a disc of 3 leaves there what it
// leaves at a kink of less.
TEST(CutterRadius, IsNotToldByAShortKeenArcBesideAWiderOne) {
  const double turn = radians(3);
  PlateChain chain{straight_step({0, 0}, {60, 0})};
  const auto arc_on = [&](double radius, double by) {
    const PlatePoint from = chain.back().to;
    const PlateVector heading = heading_at_end(chain.back());
    const PlatePoint centre = from + radius * quarter_turn(heading);
    chain.push_back({from, centre + turned(from - centre, by), by, centre, radius});
  };
  arc_on(1.5, turn);
  arc_on(3, kPi - turn);
  chain.push_back(straight_step(chain.back().to, {0, chain.back().to.v}));
  arc_on(1.5, turn);
  arc_on(3, kPi - turn);
  chain.back().to = {0, 0};
  EXPECT_NEAR(least_inside_radius_mm(chain, CutSide::inside_of_chain), 1.5, 1e-9);
  const double radius = cutter_radius_mm(chain, CutSide::inside_of_chain);
  EXPECT_GT(radius, 2.9);
  EXPECT_LT(radius, 3.05);
}

/// By polygons: what a disc that is rolled along the inside of an opening does not cover, thinned by half of a
/// hundredth from all sides.
bool covers(const PlateChain& opening, double radius) {
  constexpr double kArc_mm = 5e-4;
  const PlateRegion region{flattened(opening, 1e-3)};
  const PlateRegion open =
      grown(grown(region, -radius, Corner::round, kArc_mm), radius, Corner::round, kArc_mm);
  return grown(first_less_second(region, open), -0.005, Corner::sharp).empty();
}

TEST(CutterRadius, OfPocketsAgreesWithADiscRolledAlongTheirPolygons) {
  const LensPlan plan = *plan_lens(starting_values("6", Work::bullseye, 8));
  const FramePlan frame = plan_frame(plan);
  const RibPlan& rib = frame.ribs.front();
  ASSERT_GT(rib.pockets.size(), 5u);
  for (std::size_t i = 0; i < rib.pockets.size(); i += 3) {
    const double radius = cutter_radius_mm(rib.pockets[i].edge, CutSide::inside_of_chain);
    EXPECT_GT(radius, 0.99 * plan.values.frame.inside_radius_mm) << i;
    EXPECT_TRUE(covers(rib.pockets[i].edge, 0.98 * radius)) << i << " " << radius;
    EXPECT_FALSE(covers(rib.pockets[i].edge, 1.3 * radius)) << i << " " << radius;
  }
}

TEST(CutterRadius, OfAPlateCountsOutlineOpeningsAndPockets) {
  FlatPart part;
  part.outline = circle_chain({0, 0}, 50);
  EXPECT_EQ(cutter_radius_mm(part), std::numeric_limits<double>::infinity());
  part.openings = {circle_chain({0, 0}, 9)};
  EXPECT_EQ(cutter_radius_mm(part), 9);
  part.pockets = {{circle_chain({20, 0}, 4), 3, {}}};
  EXPECT_EQ(cutter_radius_mm(part), 4);
}

/// The same notch cut into the outside of a plate.
TEST(CutterRadius, OfAnOutlineLooksAtItFromOutside) {
  // A disc with a round bay of radius 6: a lens-shaped bite whose rims are full corners.
  const double half = radians(10);
  const PlatePoint a{50 * std::cos(half), 50 * std::sin(half)};
  const PlatePoint b{50 * std::cos(half), -50 * std::sin(half)};
  const double chord = a.v - b.v;
  const double radius = 12;
  const double turn = 2 * std::asin(chord / 2 / radius);
  const PlatePoint bay{a.u + radius * std::cos(turn / 2), 0};
  const PlateChain chain = {{a, b, 2 * kPi - 2 * half, {0, 0}, 50}, {b, a, -turn, bay, radius}};
  const double found = cutter_radius_mm(chain, CutSide::outside_of_chain);
  EXPECT_GE(found, 12);
  EXPECT_LT(found, 12.1);
}

}  // namespace
}  // namespace prismwright
