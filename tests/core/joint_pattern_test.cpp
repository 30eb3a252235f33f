#include "core/frame/joint_pattern.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/frame/bar_ends.h"
#include "core/frame/rib_holes.h"

namespace prismwright {
namespace {

JointNeeds needs(double height) { return {3.5, 3, 0, height}; }

TEST(JointPattern, PutsAScrewInEachThirdAndADowelNearEachEnd) {
  const JointPattern pattern = joint_pattern({plate_rectangle({100, 0}, {130, 300})}, needs(300));
  ASSERT_TRUE(pattern.whole());
  for (int i = 0; i < 3; ++i) {
    const PlatePoint at = pattern.screws[static_cast<std::size_t>(i)];
    EXPECT_GE(at.v, 200 - 100 * i);
    EXPECT_LE(at.v, 300 - 100 * i);
    EXPECT_GT(at.u, 115) << "rather outward";
    EXPECT_NEAR(at.u, 130 - 7, 1e-3) << "twice the need from the edge";
  }
  EXPECT_GT(pattern.dowels[0].v - pattern.dowels[1].v, 250);
}

TEST(JointPattern, KeepsItsRoomFromEdgesAndBetweenHoles) {
  // A plate that is narrow but for two lobes, with a hole in one of them.
  PlateRegion brass = united({plate_rectangle({100, 0}, {108, 300}), plate_rectangle({90, 20}, {125, 60}),
                              plate_rectangle({90, 240}, {125, 280})});
  brass = first_less_second(brass, {plate_rectangle({105, 250}, {112, 262})});
  const JointPattern pattern = joint_pattern(brass, needs(300));
  ASSERT_TRUE(pattern.whole());
  std::vector<std::pair<PlatePoint, double>> all;
  for (const PlatePoint at : pattern.screws) all.push_back({at, 3.5});
  for (const PlatePoint at : pattern.dowels) all.push_back({at, 3.0});
  for (std::size_t i = 0; i < all.size(); ++i) {
    // A disc as large as its room lies in the brass: by area.
    PlateOutline disc;
    for (int k = 0; k < 60; ++k) {
      const double angle = 2 * kPi * k / 60;
      const double r = all[i].second - 0.01;
      disc.push_back({all[i].first.u + r * std::cos(angle), all[i].first.v + r * std::sin(angle)});
    }
    EXPECT_LT(area_mm2(first_less_second({disc}, brass)), 1e-6);
    for (std::size_t k = i + 1; k < all.size(); ++k) {
      EXPECT_GE(std::hypot(all[i].first.u - all[k].first.u, all[i].first.v - all[k].first.v),
                all[i].second + all[k].second - 1e-9);
    }
  }
}

TEST(JointPattern, TakesFewerWhereTheBrassIsTooNarrow) {
  EXPECT_TRUE(joint_pattern({}, needs(300)).screws.empty());
  const JointPattern thin = joint_pattern({plate_rectangle({100, 0}, {106.5, 300})}, needs(300));
  EXPECT_TRUE(thin.screws.empty()) << "a screw asks for 7 mm";
  EXPECT_EQ(thin.dowels.size(), 2u) << "a dowel for 6";
}

RibPlan rib_at(double azimuth_deg, Side side) {
  RibPlan rib;
  rib.azimuth_deg = azimuth_deg;
  rib.side = side;
  rib.thickness_mm = 5;
  return rib;
}

// Every bore is walked along; places of its axis are turned about the panel's axis by hand.
TEST(BarEnds, KeepBoresWithinTheBar) {
  const BarSection section{200, 230, 100, 116, true};
  for (const Side side : {Side::clockwise, Side::anticlockwise}) {
    const double azimuth = side == Side::clockwise ? 10 : 50;
    const RibPlan rib = rib_at(azimuth, side);
    const BarEnd end(section, rib, 30);
    ASSERT_TRUE(end.reaches());
    const auto places = end.bore_places(6, 3);
    ASSERT_FALSE(places.empty());
    for (const PlatePoint at : places) {
      for (double depth = 5; depth <= 11; depth += 0.5) {
        const SpacePoint p = place_in(rib, at, depth);
        const SpaceVector v = p - SpacePoint{};
        const double x = dot(v, direction_at(radians(30), 0));
        const double away = std::hypot(dot(v, direction_at(radians(120), 0)), p.z);
        EXPECT_GE(x, 203 - 1e-9);
        EXPECT_LE(x, 227 + 1e-9);
        EXPECT_GE(away, 103 - 1e-9);
        EXPECT_LE(away, 113 + 1e-9);
      }
    }
  }
}

TEST(BarEnds, KnowWhetherABarComesToTheRibOrToTheLevelOfTheAxis) {
  const BarSection section{200, 230, 100, 116, true};
  // At 20 deg the plane is 200 tan 20 = 73 mm from the axis, at 40 deg 168 mm.
  const BarEnd narrow(section, rib_at(20, Side::anticlockwise), 0);
  EXPECT_TRUE(narrow.reaches());
  EXPECT_FALSE(narrow.ends_level());
  const BarEnd wide(section, rib_at(40, Side::anticlockwise), 0);
  EXPECT_FALSE(wide.reaches());
  EXPECT_TRUE(wide.ends_level());
  EXPECT_FALSE(BarEnd(section, rib_at(90, Side::anticlockwise), 0).reaches());
}

TEST(RibBrass, MeasuresRoomToOutlinePocketsAndHoles) {
  RibPlan rib;
  rib.azimuth_deg = 0;
  rib.outline = plate_rectangle({100, 0}, {150, 200});
  rib.pockets = {{plate_rectangle({110, 20}, {130, 40}), {}, {}}};
  FlatPart plate;
  plate.place = {{}, {1, 0, 0}, {0, 0, 1}, {0, -1, 0}};
  plate.holes = {{{140, 100}, 4, 8, true, ""}};
  const RibBrass brass(rib, plate, {0, 200});
  EXPECT_NEAR(brass.room_at({104, 150}), 4, 1e-12);
  EXPECT_NEAR(brass.room_at({120, 45}), 5, 1e-12);
  EXPECT_NEAR(brass.room_at({120, 30}), -10, 1e-12);
  EXPECT_NEAR(brass.room_at({98, 100}), -2, 1e-12);
  EXPECT_NEAR(brass.room_at({133, 100}), 3, 1e-12) << "from the sunk head";
}

TEST(WidestBrass, LeavesOutWhatIsNotBrassAtAllHeights) {
  RibPlan rib;
  // A plate 40 mm wide with a tab from 10 to 25 mm on its top, and a pocket that reaches into it.
  rib.outline = {{100, 0}, {140, 0}, {140, 80}, {125, 80}, {125, 100}, {110, 100}, {110, 80}, {100, 80}};
  const auto tab = widest_brass(rib, {92, 100});
  ASSERT_TRUE(tab);
  EXPECT_NEAR(tab->from_u_mm, 110, 1e-9);
  EXPECT_NEAR(tab->to_u_mm, 125, 1e-9);
  rib.pockets = {{plate_rectangle({108, 60}, {114, 95}), {}, {}}};
  const auto beside = widest_brass(rib, {92, 100});
  ASSERT_TRUE(beside);
  EXPECT_NEAR(beside->from_u_mm, 114, 1e-9);
  EXPECT_FALSE(widest_brass(rib, {99, 120})) << "taller than the tab";
}

TEST(OuterEdge, GivesLeastAndMostOverTheHeights) {
  const PlateOutline outline{{100, 0}, {140, 0}, {150, 50}, {140, 100}, {100, 100}};
  const auto edge = outer_edge(outline, {20, 60});
  ASSERT_TRUE(edge);
  EXPECT_NEAR(edge->least_u_mm, 144, 1e-9);
  EXPECT_NEAR(edge->most_u_mm, 150, 1e-9);
  EXPECT_FALSE(outer_edge(outline, {90, 110}));
}

}  // namespace
}  // namespace prismwright
